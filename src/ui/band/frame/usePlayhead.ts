import { useLayoutEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { PlaybackState } from '../../../state/types.ts';
import { pan, showsAll, xOf } from './axis.ts';
import type { BandFrame } from './bandFrame.ts';
import type { Live, Moment } from './live.ts';
import { frameAt, valueBetween } from './motion.ts';

/** Where the playhead comes back in after it has run off a zoomed axis, as a share of its width. */
const PAGE_IN = 0.1;
/** How near to an end of the axis it is turned over, as a share. */
const PAGE_OUT = 0.02;

function momentAt(time: number, frame: BandFrame): Moment {
  const { motion } = frame.view;
  if (!motion || !frame.reference) return { time, frame: 0, share: 0, place: Number.NaN, x: Number.NaN };
  const between = frameAt(motion.time, time);
  const place = valueBetween(frame.reference, between);
  return { ...between, time, place, x: xOf(frame.axis, frame.axis.kind === 'time' ? time : place) };
}

/**
 * Shows the playback's moment on everything that follows it, whenever the moment or the frame changes, and turns a
 * zoomed axis over like a page when the playhead leaves it.
 */
export function usePlayhead(playback: StoreApi<PlaybackState>, frame: BandFrame | null, live: Live): void {
  const latest = useRef(frame);

  useLayoutEffect(() => {
    latest.current = frame;
    if (frame) live.show(momentAt(playback.getState().time, frame));
  });

  useLayoutEffect(() => {
    const follow = (state: PlaybackState, before: PlaybackState) => {
      const now = latest.current;
      if (!now || state.time === before.time) return;
      const moment = momentAt(state.time, now);
      live.show(moment);
      const { axis, full } = now;
      if (showsAll(axis.span, full) || Number.isNaN(moment.x)) return;
      const edge = state.playing ? PAGE_OUT * axis.width : 0;
      if (moment.x >= edge && moment.x <= axis.width - edge) return;
      const length = axis.span.to - axis.span.from;
      const value = axis.kind === 'time' ? moment.time : moment.place;
      const forwards = moment.x > axis.width / 2;
      const share = state.playing ? (forwards ? PAGE_IN : 1 - PAGE_IN) : 0.5;
      const span = pan(axis.span, full, value - share * length - axis.span.from);
      // At an end of the track there is no further page.
      if (Math.abs(span.from - axis.span.from) > length * 1e-6) now.setSpan(span);
    };
    return playback.subscribe(follow);
  }, [playback, live]);
}
