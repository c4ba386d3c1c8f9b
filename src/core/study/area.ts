import { brinkOf, cutCells, type Piece, type Place } from './cells.ts';
import type { StudyHooks } from './hooks.ts';
import { createProbing } from './probing.ts';

/** One of the two quantities of a map. */
export interface AreaSide {
  readonly from: number;
  readonly to: number;
  /** Values evenly apart, ends included; at least 2. */
  readonly points: number;
}

export interface AreaSpec {
  readonly across: AreaSide;
  readonly up: AreaSide;
  /** Halvings of every side of a cell that the verdict changes on; 0 leaves the outline as coarse as the cells. */
  readonly refine: number;
}

export interface Area<T> {
  /** Values of the even grid. */
  readonly across: readonly number[];
  readonly up: readonly number[];
  /** Outcomes of the even grid, row by row from the low end of `up`; null where the study was stopped before. */
  readonly outcomes: readonly (T | null)[];
  /** Border between passing and failing as separate pieces, each from side to side of one cell, what passes to its left. */
  readonly outline: readonly Piece[];
  /** Where what passes reaches the edge of the range, beyond which nothing was looked at: with the outline it goes all round what passes. */
  readonly brink: readonly Piece[];
  /** How many probes it took. */
  readonly probes: number;
  readonly whole: boolean;
}

/**
 * Maps two quantities: probes an even grid, halves every side of a cell whose ends differ in `passes`, and joins the places
 * found to the outline of what passes (marching squares; a saddle is cut so that its passing corners stay apart).
 *
 * @throws RangeError when a range or a number of points says nothing
 */
export async function mapArea<T>(
  spec: AreaSpec,
  probe: (across: number, up: number) => Promise<T>,
  passes: (outcome: T) => boolean,
  hooks: StudyHooks = {},
): Promise<Area<T>> {
  const across = evenly(spec.across);
  const up = evenly(spec.up);
  const probing = createProbing(([x, y]) => probe(x, y), hooks);
  const outcomes = await probing.at(up.flatMap((y) => across.map((x) => [x, y])));
  const good = outcomes.map((outcome) => (outcome === null ? null : passes(outcome)));
  const at = (i: number, k: number): Place => [across[i], up[k]];
  const is = (i: number, k: number): boolean | null => good[k * across.length + i] ?? null;

  // Sides of cells on which the verdict changes, each named by its ends, with what is known of where.
  const sides = new Map<string, { passing: Place; failing: Place }>();
  const name = (a: Place, b: Place): string => `${a.join()} ${b.join()}`;
  const note = (i: number, k: number, m: number, n: number): void => {
    const a = is(i, k);
    const b = is(m, n);
    if (a === null || b === null || a === b) return;
    const ends = [at(i, k), at(m, n)] as const;
    sides.set(name(...ends), a ? { passing: ends[0], failing: ends[1] } : { passing: ends[1], failing: ends[0] });
  };
  for (let k = 0; k < up.length; k++) {
    for (let i = 0; i < across.length; i++) {
      if (i + 1 < across.length) note(i, k, i + 1, k);
      if (k + 1 < up.length) note(i, k, i, k + 1);
    }
  }
  for (let round = 0; round < spec.refine && !(hooks.stopped?.() ?? false); round++) {
    const open = [...sides];
    const middles = open.map(([, side]) => midway(side.passing, side.failing));
    const found = await probing.at(middles);
    open.forEach(([key, side], n) => {
      const outcome = found[n];
      if (outcome === null || outcome === undefined) return;
      sides.set(key, passes(outcome) ? { ...side, passing: middles[n] } : { ...side, failing: middles[n] });
    });
  }

  const grid = {
    across,
    up,
    inside: is,
    border(a: readonly [number, number], b: readonly [number, number]): Place | null {
      const side = sides.get(name(at(...a), at(...b))) ?? sides.get(name(at(...b), at(...a)));
      return side === undefined ? null : midway(side.passing, side.failing);
    },
  };
  const [outline, brink] = [cutCells(grid), brinkOf(grid)];
  return { across, up, outcomes, outline, brink, probes: probing.known.length, whole: !(hooks.stopped?.() ?? false) };
}

const midway = (a: Place, b: Place): Place => [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];

function evenly({ from, to, points }: AreaSide): number[] {
  if (!(Number.isFinite(from) && Number.isFinite(to) && from < to)) {
    throw new RangeError(`A map needs a range from low to high, not ${from} to ${to}.`);
  }
  if (!(Number.isInteger(points) && points >= 2)) throw new RangeError(`A map needs at least 2 points, not ${points}.`);
  return Array.from({ length: points }, (_, k) => (k === points - 1 ? to : from + (k * (to - from)) / (points - 1)));
}
