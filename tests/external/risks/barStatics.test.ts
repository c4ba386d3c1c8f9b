import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { leastEnergyLifts } from '../../../src/core/risks/barStatics.ts';

// Source: the fundamental theorem of linear programmes, that the least lies in a corner where as many conditions as unknowns hold exactly. Every corner is
// solved with a published matrix package (ml-matrix) and the cheapest that breaks no condition kept.
function cheapestCorner(weights: number[], rows: number[][], least: number[]): number {
  const n = weights.length;
  const all = [
    ...rows.map((row, k) => ({ row, bound: least[k] })),
    ...weights.map((_, i) => ({ row: weights.map((__, j) => (i === j ? 1 : 0)), bound: 0 })),
  ];
  let cheapest = Number.POSITIVE_INFINITY;
  const choose = (from: number, chosen: number[]): void => {
    if (chosen.length === n) {
      const square = new Matrix(chosen.map((k) => all[k].row));
      let point: number[];
      try {
        point = solve(square, Matrix.columnVector(chosen.map((k) => all[k].bound))).to1DArray();
      } catch {
        return;
      }
      const holds = all.every(({ row, bound }) => row.reduce((sum, one, i) => sum + one * point[i], 0) >= bound - 1e-9);
      if (holds)
        cheapest = Math.min(
          cheapest,
          point.reduce((sum, one, i) => sum + weights[i] * one, 0),
        );
      return;
    }
    for (let k = from; k < all.length; k++) choose(k + 1, [...chosen, k]);
  };
  choose(0, []);
  return cheapest;
}

describe('a chain of stiff bodies', () => {
  it('of two on one lift rests by hand: u ≥ 3 and 2·u + v ≥ 8 cost 3·u + v least at u = 3, v = 2', () => {
    expect([
      ...leastEnergyLifts(
        [3, 1],
        [
          [1, 0],
          [2, 1],
        ],
        [3, 8],
      ),
    ]).toEqual([3, 2]);
  });

  it('rests where the best corner lies', () => {
    const amount = fc.integer({ min: -20, max: 20 });
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.array(amount, { minLength: 3, maxLength: 3 }), { minLength: 2, maxLength: 4 }),
        fc.array(amount, { minLength: 4, maxLength: 4 }),
        (weights, rows, least) => {
          const bounds = least.slice(0, rows.length);
          const corner = cheapestCorner(weights, rows, bounds);
          if (corner === Number.POSITIVE_INFINITY) {
            expect(() => leastEnergyLifts(weights, rows, bounds)).toThrow(RangeError);
            return;
          }
          const lifts = [...leastEnergyLifts(weights, rows, bounds)];
          expect(lifts.reduce((sum, one, i) => sum + weights[i] * one, 0)).toBeCloseTo(corner, 7);
          for (const lift of lifts) expect(lift).toBeGreaterThan(-1e-9);
          rows.forEach((row, k) => {
            expect(row.reduce((sum, one, i) => sum + one * lifts[i], 0)).toBeGreaterThan(bounds[k] - 1e-7);
          });
        },
      ),
      { numRuns: 150 },
    );
  });
});
