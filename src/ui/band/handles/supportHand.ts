import type { Comb } from '../section/comb.ts';

/** Index of the support whose tooth stands nearest to x, px; `otherwise` without a comb. */
export function nearestTooth(comb: Comb | null, x: number, otherwise: number): number {
  let [best, gap] = [otherwise, Number.POSITIVE_INFINITY];
  for (const tooth of comb?.teeth ?? []) {
    if (Math.abs(tooth.x - x) >= gap) continue;
    [best, gap] = [Number.parseInt(tooth.key, 10), Math.abs(tooth.x - x)];
  }
  return best;
}
