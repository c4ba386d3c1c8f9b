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
    // What the turnout of a branch holds is the main track's.
    if (chainage < shape.from) return [];
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

/**
 * Parts that a stretch of strip with weight is cut into for its bend. A weightless one bends linearly, so its ends decide; weight w adds a parabola, of
 * which places l/8 apart miss at most w·l²/512EI: 0.0013 1/m on 400 mm of settled MDF of 6 mm under its track, a hundredth of a usual limit.
 */
const bendParts = 8;

function radiusRows(shape: LineShape, { leastRadius }: Limits): LimitRow[] {
  if (leastRadius === undefined) return [];
  return stretchesOf(shape).flatMap(({ from, to, plan, strip }) => {
    const parts = shape.plan.profile.e[plan] === 0 ? 1 : bendParts;
    const places = Array.from({ length: parts + 1 }, (_, i) => from + ((to - from) * i) / parts);
    return places.flatMap((chainage): LimitRow[] => {
      const bend = lineIn(shape, plan, strip, chainage, 2);
      const place: LimitPlace = { limit: 'leastRadius', chainage, support: -1 };
      return [1, -1].map((sign) => ({ place, ...bend, sign: sign as 1 | -1, bound: sign / leastRadius }));
    });
  });
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

/** Grade on one stretch as a parabola, or with weight a cubic: grade at its start, bend at both its ends, half the fourth derivative of the height. */
interface GradeForm {
  readonly stretch: Stretch;
  readonly quartic: number;
  readonly grade: LineValue;
  readonly bendFrom: LineValue;
  readonly bendTo: LineValue;
}

export function limitSet(shape: LineShape, limits: Limits, pairs: readonly HeadroomPair[]): LimitSet {
  const forms = stretchesOf(shape).map((stretch): GradeForm => {
    const at = (s: number, order: 1 | 2): LineValue => lineIn(shape, stretch.plan, stretch.strip, s, order);
    const [grade, bendFrom, bendTo] = [at(stretch.from, 1), at(stretch.from, 2), at(stretch.to, 2)];
    return { stretch, quartic: 12 * shape.plan.profile.e[stretch.plan], grade, bendFrom, bendTo };
  });
  return { shape, limits, rows: placedRows(shape, limits, pairs), forms };
}

/** The steepest place up or down of one stretch. */
export interface ExtremeGrade {
  readonly stretch: Stretch;
  readonly chainage: number;
  readonly grade: number;
}

/** Greatest (sign 1) or least (-1) grade of every stretch, exact: at an end, or where the bend is 0. */
export function extremeGrades({ forms }: LimitSet, departures: ArrayLike<number>, sign: 1 | -1): ExtremeGrade[] {
  return forms.map(({ stretch, quartic, grade, bendFrom, bendTo }) => {
    const length = stretch.to - stretch.from;
    const start = valueWith(grade, departures);
    const bend = valueWith(bendFrom, departures);
    // Bend after t: bend + t·(tilt + quartic·t).
    const tilt = (valueWith(bendTo, departures) - bend) / length - quartic * length;
    const after = (t: number): number => start + t * (bend + t * (tilt / 2 + (t * quartic) / 3));
    let [best, most] = [0, start];
    const places = [...roots(quartic, tilt, bend).filter((t) => t > 0 && t < length), length];
    for (const t of places) {
      if (sign * after(t) <= sign * most) continue;
      best = t;
      most = after(t);
    }
    return { stretch, chainage: stretch.from + best, grade: most };
  });
}

/** Where q·t² + p·t + r is 0, without the loss of digits where q is small; none where it nowhere changes sign. */
function roots(q: number, p: number, r: number): number[] {
  const inside = p * p - 4 * q * r;
  if (!(inside > 0)) return [];
  const sum = -(p + (p < 0 ? -1 : 1) * Math.sqrt(inside)) / 2;
  return [sum / q, r / sum].filter(Number.isFinite);
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
