import fc from 'fast-check';
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { latinHypercube, proportion, rankCorrelation } from '../../../src/core/study/index.ts';

describe('a share found in a sample', () => {
  // R. G. Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods", Statistics in Medicine 17 (1998) 857, Table I, method 3
  // (Wilson's score, 95 %), to four places.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %d in %d lies between %f and %f', (hits, count, low, high) => {
    const found = proportion(hits, count);
    expect(Math.abs(found.low - low)).toBeLessThan(5e-5);
    expect(Math.abs(found.high - high)).toBeLessThan(5e-5);
    expect(found.share).toBe(hits / count);
    // Failing is as sure as passing: the same interval from the other end.
    const other = proportion(count - hits, count);
    expect(other.low).toBeCloseTo(1 - found.high, 12);
    expect(other.high).toBeCloseTo(1 - found.low, 12);
  });
});

describe('rank correlation', () => {
  it('of 1 2 3 4 5 with 5 6 7 8 7 is 0.82078, two of them tied', () => {
    // The worked example in SciPy's documentation of its own rank correlation.
    expect(rankCorrelation([1, 2, 3, 4, 5], [5, 6, 7, 8, 7])).toBeCloseTo(0.8207826816681233, 14);
  });

  it('of intelligence with hours of television is -29/165', () => {
    // Ten pairs worked through in full in the encyclopaedia article on Spearman's coefficient; no ties.
    const quotient = [106, 100, 86, 101, 99, 103, 97, 113, 112, 110];
    const hours = [7, 27, 2, 50, 28, 29, 20, 12, 6, 17];
    expect(rankCorrelation(quotient, hours)).toBeCloseTo(-29 / 165, 14);
  });

  it('is the correlation of means of ranks, as ml-matrix works it, whatever the ties', () => {
    const column = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 12, maxLength: 12 });
    // A rank by counting: how many are less, and half of the others that are equal.
    const ranked = (values: readonly number[]): number[] =>
      values.map((one) => values.filter((x) => x < one).length + (values.filter((x) => x === one).length + 1) / 2);
    fc.assert(
      fc.property(column, column, (a, b) => {
        fc.pre(new Set(a).size > 1 && new Set(b).size > 1);
        const both = new Matrix([ranked(a), ranked(b)]).transpose();
        const centred = both.center('column');
        const spread = centred.transpose().mmul(centred);
        const expected = spread.get(0, 1) / Math.sqrt(spread.get(0, 0) * spread.get(1, 1));
        expect(rankCorrelation(a, b)).toBeCloseTo(expected, 12);
      }),
    );
  });
});

describe('a Latin hypercube', () => {
  const drawn = fc.record({
    count: fc.integer({ min: 1, max: 40 }),
    sides: fc.integer({ min: 1, max: 5 }),
    seed: fc.integer({ min: 0, max: 1e9 }),
  });

  it('holds one point in every slice of every side, whatever its size and seed', () => {
    // What makes it one: McKay, Beckman & Conover, Technometrics 21 (1979) 239.
    fc.assert(
      fc.property(drawn, ({ count, sides, seed }) => {
        const points = latinHypercube(count, sides, seed);
        expect(points).toHaveLength(count * sides);
        for (let side = 0; side < sides; side++) {
          const slices = Array.from({ length: count }, (_, k) => Math.floor(points[k * sides + side] * count));
          expect(slices.sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, k) => k));
        }
      }),
    );
  });

  it('knows the mean of a sum of its sides far better than as many plain draws: the theorem it was made for', () => {
    // For a function that adds up over the sides only the place within a slice is left to chance (M. Stein, Technometrics 29 (1987) 143). For a sum of s sides the
    // mean of n points then has variance s/(12 n³), by hand: n slices of width 1/n, each of variance 1/(12 n²), averaged. Plain draws have s/(12 n).
    const [count, sides, rounds] = [20, 3, 400];
    let squares = 0;
    for (let seed = 0; seed < rounds; seed++) {
      const points = latinHypercube(count, sides, seed);
      const mean = points.reduce((sum, value) => sum + value, 0) / count - sides / 2;
      squares += mean * mean;
    }
    const expected = sides / (12 * count * count * count);
    // The variance of 400 nearly normal means is known to √(2/400) = 7 %: four of these.
    expect(squares / rounds / expected).toBeGreaterThan(0.72);
    expect(squares / rounds / expected).toBeLessThan(1.28);
  });
});
