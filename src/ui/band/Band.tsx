import { useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { RouteState } from '../../state/route/index.ts';
import type { PlaybackState, SessionState } from '../../state/types.ts';
import type { BandActions } from './actions.ts';
import { Live } from './frame/live.ts';
import { useBandFrame } from './frame/useBandFrame.ts';
import { useBox } from './frame/useBox.ts';
import { usePlayhead } from './frame/usePlayhead.ts';
import { useSectionEdit } from './frame/useSectionEdit.ts';
import { Rows } from './rows/Rows.tsx';
import type { RowKeeper } from './rows/rowKeeper.ts';
import { Transport } from './time/Transport.tsx';
import './band.css';

export interface BandProps {
  readonly session: StoreApi<SessionState>;
  readonly playback: StoreApi<PlaybackState>;
  /** Which supports are chosen. */
  readonly route: StoreApi<RouteState>;
  readonly actions: BandActions;
  /** Remembers which rows the person wants. */
  readonly rowKeeper: RowKeeper;
}

/**
 * The section band with its transport row: every row on one axis of chainage or time, under one playhead. Fills the
 * height it is given and shows the rows that fit.
 */
export function Band({ session, playback, route, actions, rowKeeper }: BandProps) {
  const root = useRef<HTMLElement>(null);
  const box = useBox(root);
  const [live] = useState(() => new Live());
  const edit = useSectionEdit(session, route);
  const frame = useBandFrame(session, actions, live, root, box, edit?.track.length ?? null);
  usePlayhead(playback, frame, live);
  const failure = useStore(session, (state) => state.trial === null);
  return (
    <section ref={root} className={frame?.layout.narrow ? 'gwb-band gwb-narrow' : 'gwb-band'} aria-label="Section band">
      {frame ? (
        <>
          <Transport frame={frame} session={session} playback={playback} />
          <Rows
            frame={frame}
            edit={frame.axis.kind === 'chainage' ? edit : null}
            room={box.height}
            rowKeeper={rowKeeper}
          />
        </>
      ) : failure ? (
        <p className="gwb-empty">No trial to show yet.</p>
      ) : null}
    </section>
  );
}
