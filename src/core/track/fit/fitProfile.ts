import { TrackError } from '../problem.ts';
import type { GradePoint, MeasuredHeight } from '../types.ts';

interface ProfileFit {
  readonly points: readonly GradePoint[];
  /** Greatest difference of a height from the profile, m. */
  readonly distance: number;
}

/** More points than this follow the scatter of the heights. */
const MOST_POINTS = 200;

/** Halvings that find the longest curve that fits: to a thousandth of the room there is. */
const HALVINGS = 10;

/**
 * A profile within `tolerance`, m, of measured heights in order of chainage: grades of fewest breaks, found by going as far as
 * a straight within the tolerance goes, from break to break; then breaks are taken out while parabolas bridge them, and every one left is
 * rounded as far as the heights and its neighbours allow. Best found, not proven. Throws TrackError when heights scatter so far that no grades follow them.
 */
export function fitProfile(heights: readonly MeasuredHeight[], length: number, tolerance: number): ProfileFit {
  let points = brokenLine(heights, length, tolerance);
  if (points.length > MOST_POINTS) {
    throw new TrackError('bad-fit', `More than ${MOST_POINTS} grades would be needed: allow more than ${tolerance} m.`);
  }
  for (let i = 1; i < points.length - 1; ) {
    const without = rounded([...points.slice(0, i), ...points.slice(i + 1)], heights, tolerance);
    if (without === null) i++;
    else points = without;
  }
  const all = rounded(points, heights, tolerance) ?? points;
  return { points: all, distance: greatest(all, heights) };
}

/** The line of fewest straights within the tolerance of all heights, each starting where the one before ended. */
function brokenLine(heights: readonly MeasuredHeight[], length: number, tolerance: number): GradePoint[] {
  const points: GradePoint[] = [];
  // Half of the tolerance is left for what rounding the breaks takes.
  const room = tolerance / 2;
  let from: GradePoint = { chainage: 0, height: heights[0].height };
  points.push(from);
  for (let i = 1; i < heights.length; ) {
    let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    let end = i;
    for (; end < heights.length; end++) {
      const over = heights[end].chainage - from.chainage;
      if (over <= 0) continue;
      const least = Math.max(low, (heights[end].height - room - from.height) / over);
      const most = Math.min(high, (heights[end].height + room - from.height) / over);
      if (least > most) break;
      [low, high] = [least, most];
    }
    const grade = Number.isFinite(low) ? (low + high) / 2 : 0;
    const chainage = end >= heights.length ? length : heights[end - 1].chainage;
    from = { chainage, height: from.height + grade * (chainage - from.chainage) };
    points.push(from);
    i = Math.max(end, i + 1);
  }
  return points;
}

/** The same points with each inner one rounded as far as fits; null when no rounding meets the tolerance. */
function rounded(
  points: readonly GradePoint[],
  heights: readonly MeasuredHeight[],
  tolerance: number,
): GradePoint[] | null {
  const bare = points.map(({ chainage, height }): GradePoint => ({ chainage, height }));
  let result = bare;
  for (let i = 1; i < bare.length - 1; i++) {
    const most = Math.min(bare[i].chainage - bare[i - 1].chainage, bare[i + 1].chainage - bare[i].chainage);
    const near = heights.filter(({ chainage }) => Math.abs(chainage - bare[i].chainage) <= most);
    const withCurve = (share: number): GradePoint[] =>
      result.map((point, k) => (k === i && share > 0 ? { ...point, curve: { length: share * most } } : point));
    // The distance may first fall and then rise with the length: the longest that fits is looked for from above.
    let low = 0;
    let high = 1;
    if (greatest(withCurve(1), near) <= tolerance) low = 1;
    else {
      for (let step = 0; step < HALVINGS; step++) {
        const middle = (low + high) / 2;
        if (greatest(withCurve(middle), near) <= tolerance) low = middle;
        else high = middle;
      }
    }
    result = withCurve(low);
  }
  return greatest(result, heights) <= tolerance ? result : null;
}

/** Greatest difference of heights from points and their parabolas, m. */
function greatest(points: readonly GradePoint[], heights: readonly MeasuredHeight[]): number {
  return heights.reduce(
    (most, { chainage, height }) => Math.max(most, Math.abs(heightAt(points, chainage) - height)),
    0,
  );
}

/** Height of grades with parabolas: over a curve of length L the line falls short by Δg·(L/2 - |u|)²/2L at u from its point. */
function heightAt(points: readonly GradePoint[], s: number): number {
  let k = 0;
  while (k < points.length - 2 && points[k + 1].chainage <= s) k++;
  const grade = (i: number): number =>
    (points[i + 1].height - points[i].height) / (points[i + 1].chainage - points[i].chainage);
  let height = points[k].height + grade(k) * (s - points[k].chainage);
  for (const i of [k, k + 1]) {
    const { curve, chainage } = points[i];
    if (curve === undefined || !('length' in curve) || i === 0 || i === points.length - 1) continue;
    const inside = curve.length / 2 - Math.abs(s - chainage);
    if (inside > 0) height += ((grade(i) - grade(i - 1)) * inside * inside) / (2 * curve.length);
  }
  return height;
}
