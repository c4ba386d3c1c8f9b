import fc from 'fast-check';
import { Matrix, pseudoInverse, SVD } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { factorise, type LinearSystem, nullDirections, solveFactors } from '../../../src/core/survey/leastSquares.ts';

const systemOf = (rows: readonly (readonly number[])[], right: readonly number[]): LinearSystem => ({
  rows: rows.length,
  columns: rows[0].length,
  matrix: Float64Array.from(rows.flat()),
  right: Float64Array.from(right),
});

/**
 * National Institute of Standards and Technology, Statistical Reference Datasets, linear regression, Longley (J. W. Longley, J. Am. Stat. Assoc. 62 (1967) 819), of
 * "higher level of difficulty": data, then estimates and standard deviations certified from 500 digits, and the residual sum of squares.
 */
const longley = {
  data: [
    [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
    [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
    [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
    [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
    [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
    [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
    [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
    [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
    [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
    [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
    [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
    [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
    [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
    [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
    [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
    [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
  ],
  certified: [
    [-3482258.63459582, 890420.383607373],
    [15.0618722713733, 84.9149257747669],
    [-0.035819179292591, 0.0334910077722432],
    [-2.02022980381683, 0.488399681651699],
    [-1.03322686717359, 0.214274163161675],
    [-0.0511041056535807, 0.22607320006937],
    [1829.15146461355, 455.478499142212],
  ],
  residualSquares: 836424.055505915,
} as const;

describe('least squares on a reference problem', () => {
  const system = systemOf(
    longley.data.map(([, ...x]) => [1, ...x]),
    longley.data.map(([y]) => y),
  );
  const factors = factorise(system);
  const { values, covariance } = solveFactors(factors);
  // Columns scaled to length 1 still have a condition of some 4·10⁴ (Longley's are nearly dependent): of 16 digits 11 are left, 8 are asked for.
  const alike = (own: number, certified: number): void => expect(Math.abs(own / certified - 1)).toBeLessThan(1e-8);

  it('gives the certified estimates', () => {
    expect(factors.rank).toBe(7);
    longley.certified.forEach(([estimate], k) => {
      alike(values[k], estimate);
    });
  });

  it('gives the certified standard deviations and sum of squares', () => {
    alike(factors.remainder, longley.residualSquares);
    const variance = factors.remainder / (longley.data.length - 7);
    longley.certified.forEach(([, deviation], k) => {
      alike(Math.sqrt(variance * covariance[k * 7 + k]), deviation);
    });
  });
});

/** Small whole numbers: dependent columns come often, and dependence is exact. */
const anySystem = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 6 })).chain(([rows, columns]) =>
  fc.record({
    rows: fc.array(fc.array(fc.integer({ min: -3, max: 3 }), { minLength: columns, maxLength: columns }), {
      minLength: rows,
      maxLength: rows,
    }),
    right: fc.array(fc.integer({ min: -9, max: 9 }), { minLength: rows, maxLength: rows }),
    // Units of the unknowns: none of the answers may depend on them.
    scale: fc.array(fc.constantFrom(1e-4, 1, 1e4), { minLength: columns, maxLength: columns }),
  }),
);

describe('least squares of any matrix, against the singular values of ml-matrix', () => {
  const svdOf = (rows: readonly (readonly number[])[]): SVD =>
    new SVD(new Matrix(rows.map((row) => [...row])), { autoTranspose: true });

  it('finds the rank, whatever the units of the unknowns', () => {
    fc.assert(
      fc.property(anySystem, ({ rows, right, scale }) => {
        const scaled = rows.map((row) => row.map((value, k) => value * scale[k]));
        const { diagonal } = svdOf(rows);
        expect(factorise(systemOf(scaled, right)).rank).toBe(diagonal.filter((value) => value > 1e-9).length);
      }),
      { numRuns: 300 },
    );
  });

  it('finds as many loose directions as are missing, independent, and no row notices one', () => {
    fc.assert(
      fc.property(anySystem, ({ rows, right }) => {
        const factors = factorise(systemOf(rows, right));
        const loose = nullDirections(factors);
        expect(loose).toHaveLength(rows[0].length - factors.rank);
        for (const direction of loose) {
          const size = Math.max(...direction.map(Math.abs));
          expect(size).toBeGreaterThan(0);
          for (const row of rows) {
            const moved = row.reduce((sum, value, k) => sum + value * direction[k], 0);
            expect(Math.abs(moved)).toBeLessThan(1e-9 * size);
          }
        }
        if (loose.length === 0) return;
        const least = svdOf(loose.map((direction) => [...direction])).diagonal.filter((value) => value > 1e-9);
        expect(least).toHaveLength(loose.length);
      }),
      { numRuns: 300 },
    );
  });

  it('solves what can be told as the pseudoinverse does, with covariance (AᵀA)⁻¹, and refuses the rest', () => {
    fc.assert(
      fc.property(anySystem, ({ rows, right, scale }) => {
        const scaled = rows.map((row) => row.map((value, k) => value * scale[k]));
        const factors = factorise(systemOf(scaled, right));
        const columns = rows[0].length;
        if (factors.rank < columns) {
          expect(() => solveFactors(factors)).toThrow(RangeError);
          return;
        }
        const { values, covariance } = solveFactors(factors);
        const inverse = pseudoInverse(new Matrix(rows));
        const solved = inverse.mmul(Matrix.columnVector(right)).to1DArray();
        const spread = inverse.mmul(inverse.transpose());
        for (let i = 0; i < columns; i++) {
          expect(values[i] * scale[i]).toBeCloseTo(solved[i], 7);
          for (let j = 0; j < columns; j++) {
            expect(covariance[i * columns + j] * scale[i] * scale[j]).toBeCloseTo(spread.get(i, j), 6);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  it('leaves the sum of squares that the singular vectors leave', () => {
    fc.assert(
      fc.property(anySystem, ({ rows, right }) => {
        const a = new Matrix(rows);
        const b = Matrix.columnVector(right);
        const rest = Matrix.sub(b, a.mmul(pseudoInverse(a).mmul(b))).to1DArray();
        expect(factorise(systemOf(rows, right)).remainder).toBeCloseTo(
          rest.reduce((sum, value) => sum + value * value, 0),
          8,
        );
      }),
      { numRuns: 300 },
    );
  });
});
