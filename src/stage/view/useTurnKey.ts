import { useEffect } from 'react';
import type { StoreApi } from 'zustand';
import type { SessionState } from '../../state/types.ts';

const key = 'v';

/** Held longer than this the key was held to look, ms: letting go comes back. */
const heldFrom = 350;

const writing =
  'input:not([type="radio"], [type="range"], [type="checkbox"]), textarea, select, [contenteditable="true"]';

/** V shows the other of two railways in this one's place: pressed, from now on; held, as long as it is held. */
export function useTurnKey(session: StoreApi<SessionState>, there: boolean): void {
  useEffect(() => {
    if (!there) return;
    let since: number | null = null;
    const turn = () =>
      session.setState(({ besideLook }) => ({
        besideLook: { ...besideLook, view: 'flip', flipped: !(besideLook.view === 'flip' && besideLook.flipped) },
      }));
    const down = (event: KeyboardEvent) => {
      const typed = event.target instanceof Element && event.target.matches(writing);
      const other = event.ctrlKey || event.metaKey || event.altKey || document.querySelector('dialog[open]') !== null;
      if (event.key.toLowerCase() !== key || event.repeat || typed || other) return;
      since = event.timeStamp;
      turn();
    };
    const up = (event: KeyboardEvent) => {
      if (event.key.toLowerCase() !== key || since === null) return;
      if (event.timeStamp - since > heldFrom) turn();
      since = null;
    };
    window.addEventListener('keydown', down);
    window.addEventListener('keyup', up);
    return () => {
      window.removeEventListener('keydown', down);
      window.removeEventListener('keyup', up);
    };
  }, [session, there]);
}
