import { type LineShape, type LineValue, lineAt, lineIn, type Stretch, stretchesOf, valueWith } from './lineShape.ts';
import type { HeadroomPair, LimitCheck, LimitPlace, Limits } from './types.ts';

/** A limit at one place, linear in the departures: sign·(planned + weights·departures) ≤ sign·bound. */
export interface LimitRow extends LineValue {
  readonly place: LimitPlace;
  readonly sign: 1 | -1;
  readonly bound: number;
}

/** By how much a limit may be missed and still count as kept, in its own unit: far below what can be measured. */
export const limitTolerance: Readonly<Record<keyof Limits, number>> = {
  greatestGrade: 1e-7,
  leastGrade: 1e-7,
  greatestKink: 1e-7,
  // Of curvature, 1/m.
  leastRadius: 1e-6,
  headroom: 1e-7,
  largestRise: 1e-9,
  largestDrop: 1e-9,
};

/** Rows of every limit but grade: finitely many places decide these exactly. */
export function placedRows(shape: LineShape, limits: Limits, pairs: readonly HeadroomPair[]): LimitRow[] {
  return [...kinkRows(shape, limits), ...radiusRows(shape, limits), ...headroomRows(shape, limits, pairs)];
}

function kinkRows(shape: LineShape, { greatestKink }: Limits): LimitRow[] {
  if (greatestKink === undefined) return [];
  const { supports } = shape;
  const heights = supports.map((s) => lineAt(shape, s, 0).planned);
  return supports.slice(1, -1).flatMap((chainage, before): LimitRow[] => {
    const support = before + 1;
    const back = chainage - supports[before];
    const ahead = supports[support + 1] - chainage;
    const weights = new Float64Array(supports.length);
    weights[before] = 1 / back;
    weights[support + 1] = 1 / ahead;
    weights[support] = -weights[before] - weights[support + 1];
    const planned = weights.reduce((sum, weight, i) => sum + weight * heights[i], 0);
    const place: LimitPlace = { limit: 'greatestKink', chainage, support };
    return [1, -1].map((sign) => ({ place, planned, weights, sign: sign as 1 | -1, bound: sign * greatestKink }));
  });
}

/** Bend is linear on every stretch, so its ends decide. */
function radiusRows(shape: LineShape, { leastRadius }: Limits): LimitRow[] {
  if (leastRadius === undefined) return [];
  return stretchesOf(shape).flatMap(({ from, to, plan, strip }) =>
    [from, to].flatMap((chainage): LimitRow[] => {
      const bend = lineIn(shape, plan, strip, chainage, 2);
      const place: LimitPlace = { limit: 'leastRadius', chainage, support: -1 };
      return [1, -1].map((sign) => ({ place, ...bend, sign: sign as 1 | -1, bound: sign / leastRadius }));
    }),
  );
}

function headroomRows(shape: LineShape, { headroom }: Limits, pairs: readonly HeadroomPair[]): LimitRow[] {
  if (headroom === undefined) return [];
  return pairs.map(({ below, above, fixed, depth }): LimitRow => {
    const none = { planned: fixed, weights: new Float64Array(shape.supports.length) };
    const low = below === null ? none : lineAt(shape, below, 0);
    const high = above === null ? none : lineAt(shape, above, 0);
    return {
      place: { limit: 'headroom', chainage: below ?? above ?? 0, support: -1 },
      planned: high.planned - depth - low.planned,
      weights: high.weights.map((weight, i) => weight - low.weights[i]),
      sign: -1,
      bound: headroom,
    };
  });
}

/** The row of a grade at one place of a stretch. */
export function gradeRow(
  shape: LineShape,
  { plan, strip }: Stretch,
  chainage: number,
  limit: 'greatestGrade' | 'leastGrade',
  bound: number,
): LimitRow {
  const place: LimitPlace = { limit, chainage, support: -1 };
  return { place, ...lineIn(shape, plan, strip, chainage, 1), sign: limit === 'greatestGrade' ? 1 : -1, bound };
}

/** Everything needed to judge a line against its limits, prepared once. */
export interface LimitSet {
  readonly shape: LineShape;
  readonly limits: Limits;
  /** All limits but grade. */
  readonly rows: readonly LimitRow[];
  readonly forms: readonly GradeForm[];
}

/** Grade on one stretch as a parabola: grade at its start, bend at both its ends. */
interface GradeForm {
  readonly stretch: Stretch;
  readonly grade: LineValue;
  readonly bendFrom: LineValue;
  readonly bendTo: LineValue;
}

export function limitSet(shape: LineShape, limits: Limits, pairs: readonly HeadroomPair[]): LimitSet {
  const forms = stretchesOf(shape).map((stretch): GradeForm => {
    const at = (s: number, order: 1 | 2): LineValue => lineIn(shape, stretch.plan, stretch.strip, s, order);
    return { stretch, grade: at(stretch.from, 1), bendFrom: at(stretch.from, 2), bendTo: at(stretch.to, 2) };
  });
  return { shape, limits, rows: placedRows(shape, limits, pairs), forms };
}

/** The steepest place up or down of one stretch. */
export interface ExtremeGrade {
  readonly stretch: Stretch;
  readonly chainage: number;
  readonly grade: number;
}

/** Greatest (sign 1) or least (-1) grade of every stretch, exact: at an end, or at the vertex of the parabola. */
export function extremeGrades({ forms }: LimitSet, departures: ArrayLike<number>, sign: 1 | -1): ExtremeGrade[] {
  return forms.map(({ stretch, grade, bendFrom, bendTo }) => {
    const length = stretch.to - stretch.from;
    const start = valueWith(grade, departures);
    const bend = valueWith(bendFrom, departures);
    const bendAtEnd = valueWith(bendTo, departures);
    const after = (t: number): number => start + t * (bend + (t * (bendAtEnd - bend)) / (2 * length));
    let [best, most] = [0, start];
    const places = bend * bendAtEnd < 0 ? [(length * bend) / (bend - bendAtEnd), length] : [length];
    for (const t of places) {
      if (sign * after(t) <= sign * most) continue;
      best = t;
      most = after(t);
    }
    return { stretch, chainage: stretch.from + best, grade: most };
  });
}

/** What every limit on the line comes to at its worst place. Limits on the work itself are not among them. */
export function checkLimits(set: LimitSet, departures: ArrayLike<number>): LimitCheck[] {
  const { limits, rows } = set;
  const checks: LimitCheck[] = [];
  for (const [limit, sign] of [['greatestGrade', 1] as const, ['leastGrade', -1] as const]) {
    const bound = limits[limit];
    if (bound === undefined) continue;
    const worst = extremeGrades(set, departures, sign).reduce((a, b) => (sign * b.grade > sign * a.grade ? b : a));
    const holds = sign * (worst.grade - bound) <= limitTolerance[limit];
    checks.push({ limit, value: worst.grade, chainage: worst.chainage, bound, holds });
  }
  for (const limit of ['greatestKink', 'leastRadius', 'headroom'] as const) {
    const bound = limits[limit];
    if (bound === undefined) continue;
    let worst: { excess: number; value: number; chainage: number } | null = null;
    for (const row of rows) {
      if (row.place.limit !== limit) continue;
      const value = valueWith(row, departures);
      const excess = row.sign * (value - row.bound);
      if (worst === null || excess > worst.excess) worst = { excess, value, chainage: row.place.chainage };
    }
    if (worst === null) continue;
    const size = limit === 'headroom' ? worst.value : Math.abs(worst.value);
    const value = limit === 'leastRadius' ? 1 / size : size;
    checks.push({ limit, value, chainage: worst.chainage, bound, holds: worst.excess <= limitTolerance[limit] });
  }
  return checks;
}

/** True when every limit on the line holds. */
export const keepsLimits = (set: LimitSet, departures: ArrayLike<number>): boolean =>
  checkLimits(set, departures).every(({ holds }) => holds);
