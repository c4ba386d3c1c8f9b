import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveTridiagonal } from '../../../src/core/math/index.ts';
import { evenly } from '../../evenly.ts';

const entry = evenly(-10, 10);

describe('solveTridiagonal', () => {
  it('solves the second difference of a parabola', () => {
    // -x[i-1] + 2x[i] - x[i+1] = 2 with zero ends is x[i] = i(6-i), i = 1..5.
    const x = solveTridiagonal([0, -1, -1, -1, -1], [2, 2, 2, 2, 2], [-1, -1, -1, -1, 0], [2, 2, 2, 2, 2]);
    expect([...x]).toEqual([5, 8, 9, 8, 5].map((value) => expect.closeTo(value, 13)));
  });

  it('exchanges rows when a diagonal entry is 0', () => {
    // Rows: y = 3; x + 2z = 7; y + z = 5, so z = 2, x = 3.
    const x = solveTridiagonal([0, 1, 1], [0, 0, 1], [1, 2, 0], [3, 7, 5]);
    expect([...x]).toEqual([3, 3, 2].map((value) => expect.closeTo(value, 14)));
  });

  it('refuses a singular matrix', () => {
    expect(() => solveTridiagonal([0, 1], [1, 1], [1, 0], [1, 2])).toThrow(RangeError);
    expect(() => solveTridiagonal([0, 0, 0], [0, 1, 1], [0, 0, 0], [1, 1, 1])).toThrow(/row 0/);
  });

  it('leaves its inputs alone and accepts no rows', () => {
    const [lower, diagonal, upper, right] = [
      [0, 3],
      [1, 2],
      [4, 0],
      [5, 6],
    ];
    solveTridiagonal(lower, diagonal, upper, right);
    expect([lower, diagonal, upper, right]).toEqual([
      [0, 3],
      [1, 2],
      [4, 0],
      [5, 6],
    ]);
    expect(solveTridiagonal([], [], [], [])).toHaveLength(0);
  });

  it('returns a solution that satisfies every row of a well-conditioned system', () => {
    const system = fc.array(fc.tuple(entry, entry, entry), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(system, (rows) => {
        const lower = rows.map((row) => row[0]);
        const upper = rows.map((row) => row[1]);
        const right = rows.map((row) => row[2]);
        // Dominant diagonal of either sign: the condition number stays below 100.
        const diagonal = rows.map((row) => 21 * (row[2] < 0 ? -1 : 1));
        const x = solveTridiagonal(lower, diagonal, upper, right);
        rows.forEach((_, i) => {
          const sum = (i > 0 ? lower[i] * x[i - 1] : 0) + diagonal[i] * x[i] + upper[i] * (x[i + 1] ?? 0);
          expect(Math.abs(sum - right[i])).toBeLessThan(1e-12);
        });
      }),
    );
  });
});
