import { type ReactNode, useEffect } from 'react';
import type { Session } from '../state/index.ts';
import type { PlaybackState, SessionState } from '../state/types.ts';

declare global {
  interface Window {
    /** What the page shows, to read: for tests that drive the page from outside. */
    readonly gradewright?: { readonly session: SessionState; readonly playback: PlaybackState };
  }
}

/** Lets tests read the state of the page, from when what is inside has bound its keys. */
export function ShownToTests({ session, children }: { readonly session: Session; readonly children: ReactNode }) {
  // An effect comes after those of what is inside: a test that finds the state may press a key at once.
  useEffect(() => showToTests(session), [session]);
  return children;
}

/** Nothing can be changed through it. */
function showToTests({ session, playback }: Session): void {
  // In strict mode, while developing, effects come twice.
  if (window.gradewright) return;
  Object.defineProperty(window, 'gradewright', {
    value: Object.freeze({
      get session() {
        return session.getState();
      },
      get playback() {
        return playback.getState();
      },
    }),
  });
}
