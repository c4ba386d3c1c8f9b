import { tidy } from '../edits/tidy.ts';
import type { SceneElement, SceneProfilePoint, SceneTrack } from '../schema/trackSchema.ts';
import { supportsFor, verticalCurveFor } from './pieces.ts';
import type { ShapeScale } from './scales.ts';

interface Climb {
  readonly id: string;
  readonly name: string;
  readonly start: SceneTrack['start'];
  /** What lies level before the grade, laid before the foot; a branch's way out of its turnout. */
  readonly before?: readonly SceneElement[];
  readonly footMm: number;
  /** What rises, evenly from end to end. */
  readonly rising: readonly SceneElement[];
  readonly headMm: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** A track that is level on its straight foot, rises evenly, and is level on its straight head, with vertical curves where it changes. */
export function climbTrack(scale: ShapeScale, climb: Climb): SceneTrack {
  const { id, name, start, before = [], footMm, rising, headMm, fromMm, toMm } = climb;
  return {
    id,
    name,
    start,
    alignment: [
      ...before,
      { kind: 'straight', id: 'foot', lengthMm: tidy(footMm) },
      ...rising,
      { kind: 'straight', id: 'head', lengthMm: tidy(headMm) },
    ],
    profile: [
      // A branch is as high as its main track until the heel of its turnout.
      ...('branchOf' in start ? [] : [{ atMm: 0, heightMm: tidy(fromMm) }]),
      gradeChange(scale, { endOf: 'foot' }, fromMm),
      gradeChange(scale, { startOf: 'head' }, toMm),
      // Level from there, so that the deck goes up and down with one number.
      { at: { endOf: 'track' }, gradePercent: 0 },
    ],
    supports: { everyMm: supportsFor(scale) },
  };
}

/** A place where a grade begins or ends, with its vertical curve. */
export function gradeChange(
  scale: ShapeScale,
  at: NonNullable<SceneProfilePoint['at']>,
  heightMm: number,
): SceneProfilePoint {
  return { at, heightMm: tidy(heightMm), verticalCurveLengthMm: verticalCurveFor(scale).mm };
}

/** A straight that rises by so much at a grade of so many per cent, mm. Throws RangeError, in words, where the vertical curves at its ends are longer. */
export function slopeMm(scale: ShapeScale, riseMm: number, gradePercent: number): number {
  const curve = verticalCurveFor(scale).mm;
  const mm = tidy((100 * riseMm) / gradePercent);
  if (mm >= curve) return mm;
  const steepest = Math.floor((1000 * riseMm) / curve) / 10;
  const [rise, would] = [Math.round(riseMm), steepest > 0 ? `${steepest} % at most` : 'a greater rise'];
  throw new RangeError(
    `A climb of ${rise} mm at ${gradePercent} % is shorter than its vertical curves of ${curve} mm: ${would}.`,
  );
}
