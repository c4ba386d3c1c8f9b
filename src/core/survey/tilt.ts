/**
 * A phone's tilt sensor as a level: its long edge lies along the track. Grades here are those of the long edge towards its
 * top end, rise over plan distance; a tilt is a grade, so that sums and halves of angles need no angle.
 */

import { atan2, cos, sin } from '../math/index.ts';

/** One look at the sensor. */
export interface TiltSample {
  /** s, from any beginning. */
  readonly time: number;
  readonly grade: number;
  /** Direction of the top end in plan, rad, from any zero. */
  readonly heading: number;
}

/** The last looks together. */
export interface Steadiness {
  readonly mean: number;
  /** Standard deviation of one look. */
  readonly spread: number;
  /** Time the looks cover, s. */
  readonly span: number;
  readonly heading: number;
  /** Whether the phone has lain still for the whole of `stillTime`. */
  readonly still: boolean;
}

/** A tilt read off a phone that lay still. */
export interface Face {
  readonly grade: number;
  /** Its standard deviation. */
  readonly deviation: number;
  readonly heading: number;
}

/** What two faces tell: the same place read with the phone one way round and the other. */
export interface Reversal {
  /** Grade of the place, in the direction of the first face's top end. */
  readonly grade: number;
  /** What the phone shows on the level. */
  readonly bias: number;
  /** Standard deviation of each of the two. */
  readonly deviation: number;
  /** False where the second face points the same way as the first: the phone was not turned. */
  readonly turned: boolean;
}

/** Smallest step of the angle a browser hands on, rad: 0.1°, coarse on purpose, so that no sensor can be told from another. */
export const tiltStep = Math.PI / 1800;

/** How long a phone must lie still before it is read, s: hands off, and the strip's own trembling dies away. */
export const stillTime = 1.5;

/** Least and greatest look of a phone that lies still are at most two steps apart: one of noise, one of rounding. */
const stillRange = 2.1 * tiltStep;

/** A sensor smooths over about this time, s (assumption): looks that are nearer tell nothing new. */
const smoothing = 0.1;

/** Steeper than this a phone leans against something and is no level. */
const steepest = 0.5;

/** Two faces are end for end when their headings differ by half a turn, within 60°: no hand turns worse. */
const headingSlack = Math.PI / 3;

/**
 * The long edge of a phone from the first two angles of its orientation, rad: `alpha` about the vertical, then `beta` about
 * the short edge (W3C, Device Orientation and Motion). The third turns it about the long edge itself and does not matter, so
 * it may lie on its back or stand on its side. Null where it is too steep to be a level.
 */
export function longEdge(alpha: number, beta: number): Pick<TiltSample, 'grade' | 'heading'> | null {
  // The top end's direction, east, north and up: (-sin α cos β, cos α cos β, sin β).
  const level = cos(beta);
  const grade = sin(beta) / Math.abs(level);
  if (!(Math.abs(grade) <= steepest)) return null;
  return { grade, heading: atan2(-sin(alpha) * level, cos(alpha) * level) };
}

/** How steadily the phone lies at the end of `samples` (rising time); null for none. */
export function steadiness(samples: readonly TiltSample[]): Steadiness | null {
  const last = samples.at(-1);
  if (last === undefined) return null;
  const recent = samples.filter(({ time }) => last.time - time <= stillTime);
  const mean = recent.reduce((sum, { grade }) => sum + grade, 0) / recent.length;
  const squares = recent.reduce((sum, { grade }) => sum + (grade - mean) * (grade - mean), 0);
  const spread = Math.sqrt(squares / Math.max(1, recent.length - 1));
  const grades = recent.map(({ grade }) => grade);
  const range = Math.max(...grades) - Math.min(...grades);
  const span = last.time - recent[0].time;
  // One look may be late, so that the recent ones do not quite fill the time.
  const still = span >= stillTime - smoothing && range <= stillRange;
  return { mean, spread, span, heading: last.heading, still };
}

/**
 * The reading of a phone that lay still. Its noise averages out over the looks that are independent; rounding does not, since
 * a phone that lies still is rounded the same way every time.
 */
export function faceOf({ mean, spread, span, heading }: Steadiness): Face {
  const independent = Math.max(1, span / smoothing);
  const deviation = Math.sqrt((spread * spread) / independent + (tiltStep * tiltStep) / 12);
  return { grade: mean, deviation, heading };
}

/** A tilt with another taken off it: tan(a - b) from the tangents. */
export const lessTilt = (grade: number, off: number): number => (grade - off) / (1 + grade * off);

/**
 * Calibration by reversal. The first face reads grade + bias, the second, turned end for end, bias - grade: half their sum is
 * the bias, half their difference the grade, of angles; the place itself need not be level.
 */
export function reversal(first: Face, second: Face): Reversal {
  const apart = Math.abs(second.heading - first.heading) % (2 * Math.PI);
  const off = Math.abs(apart - Math.PI);
  return {
    grade: midTilt(first.grade, -second.grade),
    bias: midTilt(first.grade, second.grade),
    deviation: Math.sqrt(first.deviation * first.deviation + second.deviation * second.deviation) / 2,
    turned: off <= headingSlack,
  };
}

/** The tilt half-way between two: tan((a + b)/2) = (sin a + sin b)/(cos a + cos b). */
function midTilt(a: number, b: number): number {
  const [cosA, cosB] = [1 / Math.sqrt(1 + a * a), 1 / Math.sqrt(1 + b * b)];
  return (a * cosA + b * cosB) / (cosA + cosB);
}
