import { cutCells, joinedLines, type Place } from './cells.ts';

/**
 * Lines along which values on a grid come to a level, found by straight interpolation along the sides of its cells; more is to the left of each. Where a cell is a saddle the mean of
 * its corners decides. Cells of which a corner is not known have none.
 *
 * @param values row by row from the low end of `up`; null: not known
 */
export function contoursOf(
  across: readonly number[],
  up: readonly number[],
  values: readonly (number | null)[],
  level: number,
): Place[][] {
  const at = (i: number, k: number): number | null => values[k * across.length + i] ?? null;
  const known = (i: number, k: number): number => at(i, k) ?? Number.NaN;
  const pieces = cutCells({
    across,
    up,
    inside(i, k) {
      const value = at(i, k);
      return value === null ? null : value >= level;
    },
    border(a, b) {
      // The same sum whichever end comes first, so that neighbours meet in one place to the bit.
      const [low, high] = a[0] < b[0] || a[1] < b[1] ? [a, b] : [b, a];
      const [from, to] = [known(...low), known(...high)];
      const share = (level - from) / (to - from);
      const between = (one: number, other: number): number => one + (other - one) * share;
      return [between(across[low[0]], across[high[0]]), between(up[low[1]], up[high[1]])];
    },
    joins: (i, k) => known(i, k) + known(i + 1, k) + known(i, k + 1) + known(i + 1, k + 1) >= 4 * level,
  });
  return joinedLines(pieces);
}
