import { timeAtPlace } from '../../../state/index.ts';
import { crossings } from '../section/ground.ts';
import { type AxisScale, valueAt } from './axis.ts';
import type { BandFrame } from './bandFrame.ts';
import { frameAt, valueBetween } from './motion.ts';

/**
 * The moment (s) meant by pixel `x`: on a time axis the time there; on a chainage axis the moment when the reference
 * passes that place, of several the one nearest to now. Null without a run.
 */
export function timeAtX(frame: BandFrame, axis: AxisScale, x: number, now: number, joint?: number): number | null {
  const { motion } = frame.view;
  if (!motion) return null;
  const value = valueAt(axis, x);
  if (axis.kind === 'time') return Math.min(motion.time[motion.time.length - 1], Math.max(0, value));
  const places = joint === undefined ? frame.reference : motion.joints[joint];
  return places ? timeAtPlace(motion.time, places, value, now) : null;
}

/** The moment one pixel further to the left (-1) or right (1) of where the playhead is. */
export function timeOneCell(frame: BandFrame, now: number, direction: 1 | -1): number | null {
  const { motion } = frame.view;
  if (!motion || !frame.reference) return null;
  const { axis } = frame;
  const cell = ((axis.span.to - axis.span.from) / axis.width) * direction;
  if (axis.kind === 'time') return Math.min(motion.time[motion.time.length - 1], Math.max(0, now + cell));
  const place = valueBetween(frame.reference, frameAt(motion.time, now));
  return timeAtPlace(motion.time, frame.reference, place + cell, now);
}

/** Places nearer than this to the playhead are where it already is, m. */
const HERE = 1e-6;

/** The moment when the reference stands at the next support to the left or right on the axis. */
export function timeNextSupport(frame: BandFrame, now: number, direction: 1 | -1): number | null {
  const { motion, track } = frame.view;
  const { reference, axis } = frame;
  const supports = track.spec.profile.strip?.supports ?? [];
  if (!motion || !reference) return null;
  if (axis.kind === 'chainage') {
    const place = valueBetween(reference, frameAt(motion.time, now));
    const next = supports
      .map((support) => (support.chainage - place) * direction)
      .filter((away) => away > HERE)
      .reduce((least, away) => Math.min(least, away), Number.POSITIVE_INFINITY);
    return Number.isFinite(next) ? timeAtPlace(motion.time, reference, place + next * direction, now) : null;
  }
  let best: number | null = null;
  for (const support of supports) {
    for (const at of crossings(reference, support.chainage)) {
      const f = Math.floor(at);
      const time = valueBetween(motion.time, { frame: f, share: at - f });
      if ((time - now) * direction > HERE && (best === null || (best - time) * direction > 0)) best = time;
    }
  }
  return best;
}

/** The moment at the left (-1) or right (1) end of what the reference covers on the axis. */
export function timeAtEnd(frame: BandFrame, direction: 1 | -1): number | null {
  const { motion } = frame.view;
  const { reference, axis } = frame;
  if (!motion || !reference) return null;
  const last = reference.length - 1;
  if (axis.kind === 'time') return direction > 0 ? motion.time[last] : motion.time[0];
  let best = 0;
  for (let f = 1; f <= last; f++) if ((reference[f] - reference[best]) * direction > 0) best = f;
  return motion.time[best];
}
