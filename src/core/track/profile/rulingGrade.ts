import { trackPoint } from '../point.ts';
import type { Track } from '../types.ts';

/** The hardest place of a track for a train of some length. */
export interface RulingGrade {
  /** Mean over the train of the grade and what its curves add, uphill in the direction looked at, as a ratio. */
  readonly grade: number;
  /** Its part that is rise over run alone. */
  readonly rise: number;
  /** Where the rear and the head of the train then stand, m: `from` < `to` whichever way it runs. */
  readonly from: number;
  readonly to: number;
}

export interface RulingGradeOptions {
  /** Length of the train, m; 0 looks at single places. */
  readonly window: number;
  /** Which way the train climbs: towards growing or falling chainage. */
  readonly towards: 'end' | 'start';
  /** Grade that a curve is worth: this length, m, over the radius; 0 leaves curves out. */
  readonly curveLength: number;
}

/** Places looked at from end to end: finer than any support spacing on the longest track of a scene. */
const PLACES = 20_000;

/** Nowhere more than this apart, m: a tenth of the closest supports. */
const CLOSEST = 0.002;

/**
 * The greatest mean grade over a window as long as the train, on the track as built (strip, steps and all), with curves
 * counted as grade by curveLength·|κ| if wanted. The mean of dz/ds over the train is exact, the rise between its ends over its
 * length; the mean of |κ| is summed from place to place (a trapezoid, exact on straights, arcs and clothoids that do not reverse). A window longer
 * than the track is the track. Throws RangeError unless window and curve length are 0 or more.
 */
export function rulingGrade(track: Track, options: RulingGradeOptions): RulingGrade {
  const { window, towards, curveLength } = options;
  if (!(window >= 0) || !(curveLength >= 0))
    throw new RangeError('A train and its curve resistance cannot be negative.');
  const { length } = track;
  const count = Math.max(1, Math.min(PLACES, Math.ceil(length / CLOSEST)));
  const step = length / count;
  const span = Math.min(window, length);
  const way = towards === 'end' ? 1 : -1;
  const turned = new Float64Array(count + 1);
  const point = trackPoint(track, 0);
  let bend = Math.abs(point.curvature);
  for (let i = 1; i <= count; i++) {
    const here = Math.abs(trackPoint(track, i * step, point).curvature);
    turned[i] = turned[i - 1] + ((bend + here) / 2) * step;
    bend = here;
  }
  const turnedTo = (s: number): number => {
    const i = Math.min(count - 1, Math.floor(s / step));
    return turned[i] + (turned[i + 1] - turned[i]) * (s / step - i);
  };
  let best: RulingGrade = { grade: Number.NEGATIVE_INFINITY, rise: 0, from: 0, to: 0 };
  for (let i = 0; i <= count; i++) {
    const from = Math.min(i * step, length - span);
    const to = from + span;
    let rise: number;
    let curve: number;
    if (span === 0) {
      trackPoint(track, from, point);
      rise = way * point.grade;
      curve = Math.abs(point.curvature);
    } else {
      const low = trackPoint(track, from, point).z;
      rise = (way * (trackPoint(track, to, point).z - low)) / span;
      curve = (turnedTo(to) - turnedTo(from)) / span;
    }
    const grade = rise + curveLength * curve;
    if (grade > best.grade) best = { grade, rise, from, to };
    if (from === length - span && span > 0) break;
  }
  return best;
}
