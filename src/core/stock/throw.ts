/**
 * How far a body on a circular curve stands off the track's centreline, in plan. Radius, distance between running points
 * and overhang (body end beyond the running point) in metres; results in metres, positive: inward for the centre, outward
 * for an end. The exact forms put the chord of the running points on the circle; the handbook forms are their first terms.
 */

import { hypot } from '../math/index.ts';

/** Distance from the curve's centre to the middle of the chord, m. Throws RangeError when the chord is longer than the circle is wide. */
function chordDistance(radius: number, pivotSpacing: number): number {
  const half = pivotSpacing / 2;
  if (!(radius > half)) {
    throw new RangeError(
      `No chord of ${pivotSpacing} m on a curve of radius ${radius} m: the radius must exceed half of it`,
    );
  }
  return Math.sqrt((radius - half) * (radius + half));
}

/** Centre throw, exact: R - √(R² - a²/4). */
export function centreThrow(radius: number, pivotSpacing: number): number {
  // Written without the difference of two near-equal numbers.
  return (pivotSpacing * pivotSpacing) / 4 / (radius + chordDistance(radius, pivotSpacing));
}

/** Centre throw by the handbook: a²/8R. */
export const centreThrowHandbook = (radius: number, pivotSpacing: number): number =>
  (pivotSpacing * pivotSpacing) / (8 * radius);

/** End throw at the body's middle line, exact: √(m² + (a/2 + o)²) - R with m the distance of the chord from the centre. */
export function endThrow(radius: number, pivotSpacing: number, overhang: number): number {
  const distance = hypot(chordDistance(radius, pivotSpacing), pivotSpacing / 2 + overhang);
  return (overhang * (pivotSpacing + overhang)) / (radius + distance);
}

/** End throw by the handbook: o(a + o)/2R, which is (L² - a²)/8R when both overhangs are alike. */
export const endThrowHandbook = (radius: number, pivotSpacing: number, overhang: number): number =>
  (overhang * (pivotSpacing + overhang)) / (2 * radius);

/** How far the outer corner of an end stands beyond half the body's width from the centreline, exact, m. */
export function cornerThrow(radius: number, pivotSpacing: number, overhang: number, bodyWidth: number): number {
  const across = chordDistance(radius, pivotSpacing) + bodyWidth / 2;
  return hypot(across, pivotSpacing / 2 + overhang) - radius - bodyWidth / 2;
}

/**
 * Offset (m) between the ends of two like vehicles that face each other where one curve turns into its reverse with no straight, by the
 * handbook: both throw outward, to opposite sides, o(a + o)/R = (L² - a²)/4R.
 */
export const reverseOffsetHandbook = (radius: number, pivotSpacing: number, overhang: number): number =>
  2 * endThrowHandbook(radius, pivotSpacing, overhang);
