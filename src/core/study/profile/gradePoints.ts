import type { GradePoint } from '../../track/types.ts';
import type { Nodes } from './nodes.ts';
import { gradeAt, heightAt } from './problem.ts';

/** Intervals whose vertical curvatures differ by less than this share of the greatest allowed are one curve: rounding of the solver. */
const SAME_BEND = 1e-4;

/** A stretch of one vertical curvature. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly height: number;
  readonly grade: number;
  readonly bend: number;
}

/**
 * A solution in the form that a track takes: a grade point in the middle of every stretch of one vertical curvature, its curve as long as the
 * stretch, and a point at either end of the track. Exactly the same heights: a grade that runs linearly is a parabola.
 */
export function gradePointsOf(nodes: Nodes, values: ArrayLike<number>, verticalRadius: number): GradePoint[] {
  const { at } = nodes;
  const n = at.length;
  const grade = (k: number): number => values[gradeAt(k)] / 100;
  const height = (k: number): number => values[heightAt(k, n)] / 1000;
  const pieces: Piece[] = [];
  for (let k = 0; k + 1 < n; k++) {
    const bend = (grade(k + 1) - grade(k)) / (at[k + 1] - at[k]);
    const last = pieces[pieces.length - 1];
    if (last !== undefined && Math.abs(last.bend - bend) * verticalRadius < SAME_BEND) {
      pieces[pieces.length - 1] = { ...last, to: at[k + 1] };
    } else pieces.push({ from: at[k], to: at[k + 1], height: height(k), grade: grade(k), bend });
  }
  const curves = pieces.filter(({ bend }) => Math.abs(bend) * verticalRadius >= SAME_BEND);
  return [
    { chainage: 0, height: height(0) },
    ...curves.map(({ from, to, height: low, grade: before }) => ({
      chainage: (from + to) / 2,
      height: low + (before * (to - from)) / 2,
      curve: { length: to - from },
    })),
    { chainage: at[n - 1], height: height(n - 1) },
  ];
}

/** What a builder sets places and heights to, m. */
export interface Setting {
  readonly place: number;
  readonly height: number;
}

/**
 * The same points as a builder sets them: ends of vertical curves at whole steps of place, heights at whole steps of height. Curves that touched
 * touch still; one that vanishes in the rounding is left out. The ends of the track stay where they are.
 */
export function roundedPoints(points: readonly GradePoint[], { place, height }: Setting): GradePoint[] {
  const last = points.length - 1;
  const length = points[last].chainage;
  const whole = (value: number, step: number): number => Math.round(value / step) * step;
  // Two curves that touch reckon their common end each by itself; a tenth of a micrometre more, and both round it the same way.
  const end = (s: number): number => Math.min(Math.max(whole(s + 1e-7, place), 0), Math.floor(length / place) * place);
  return points.flatMap((point, k): GradePoint[] => {
    const level = whole(point.height, height);
    if (k === 0 || k === last || point.curve === undefined || !('length' in point.curve)) {
      return [{ ...point, height: level }];
    }
    const from = end(point.chainage - point.curve.length / 2);
    const to = end(point.chainage + point.curve.length / 2);
    return to - from < place / 2 ? [] : [{ chainage: (from + to) / 2, height: level, curve: { length: to - from } }];
  });
}
