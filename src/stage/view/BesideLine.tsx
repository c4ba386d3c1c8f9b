import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react';
import { type StoreApi, useStore } from 'zustand';
import type { SessionState } from '../../state/types.ts';
import { useTurnKey } from './useTurnKey.ts';

/** What a key moves the line by, as a share of the stage; with Shift ten times as far. */
const step = 0.01;

/** The line keeps this far from the edges, so that it can always be taken hold of. */
const edge = 0.02;

const held = (share: number): number => Math.min(1 - edge, Math.max(edge, share));

const steps: Readonly<Record<string, number>> = { ArrowLeft: -step, ArrowRight: step };

/** Two railways on one stage: which is which, and the line between them where it is divided. */
export function BesideLine({ session }: { readonly session: StoreApi<SessionState> }) {
  const name = useStore(session, (state) => state.beside?.name ?? null);
  const { view, divider, flipped } = useStore(session, (state) => state.besideLook);
  /** Where the line was when a hand took hold of it; null while none does. */
  const began = useRef<number | null>(null);
  useEffect(() => {
    // Escape puts the line back before it means anything else.
    const onEscape = (event: globalThis.KeyboardEvent) => {
      const from = began.current;
      if (event.key !== 'Escape' || from === null) return;
      event.preventDefault();
      event.stopPropagation();
      began.current = null;
      session.setState(({ besideLook }) => ({ besideLook: { ...besideLook, divider: from } }));
    };
    window.addEventListener('keydown', onEscape, { capture: true });
    return () => window.removeEventListener('keydown', onEscape, { capture: true });
  }, [session]);
  useTurnKey(session, name !== null);
  if (name === null) return null;
  const move = (share: number) =>
    session.setState(({ besideLook }) => ({ besideLook: { ...besideLook, divider: held(share) } }));
  const follow = (event: PointerEvent<HTMLElement>) => {
    const stage = event.currentTarget.parentElement?.getBoundingClientRect();
    if (began.current !== null && stage) move((event.clientX - stage.left) / stage.width);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = steps[event.key];
    if (by === undefined) return;
    move(divider + by * (event.shiftKey ? 10 : 1));
    event.preventDefault();
    event.stopPropagation();
  };
  if (view !== 'split') {
    return (
      <p className="stage-beside" role="status">
        {view === 'ghost' ? (
          <>
            <i className="strong" /> this railway <i className="faint" /> {name}
          </>
        ) : (
          <b>{flipped ? name : 'this railway'}</b>
        )}
      </p>
    );
  }
  return (
    <div
      className="stage-divider"
      style={{ left: `${100 * divider}%` }}
      role="slider"
      tabIndex={0}
      aria-label={`Line between this railway and ${name}`}
      aria-orientation="horizontal"
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(100 * divider)}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        began.current = divider;
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={follow}
      onPointerUp={() => {
        began.current = null;
      }}
      onPointerCancel={() => {
        began.current = null;
      }}
    >
      <span className="left">this railway</span>
      <span className="right">{name}</span>
    </div>
  );
}
