import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
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
  const dragging = useRef(false);
  useTurnKey(session, name !== null);
  if (name === null) return null;
  const move = (share: number) =>
    session.setState(({ besideLook }) => ({ besideLook: { ...besideLook, divider: held(share) } }));
  const follow = (event: PointerEvent<HTMLElement>) => {
    const stage = event.currentTarget.parentElement?.getBoundingClientRect();
    if (dragging.current && stage) move((event.clientX - stage.left) / stage.width);
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
        dragging.current = true;
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={follow}
      onPointerUp={() => {
        dragging.current = false;
      }}
      onPointerCancel={() => {
        dragging.current = false;
      }}
    >
      <span className="left">this railway</span>
      <span className="right">{name}</span>
    </div>
  );
}
