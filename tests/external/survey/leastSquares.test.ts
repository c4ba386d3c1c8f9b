import { Matrix, pseudoInverse, SVD } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { whiteSystem } from '../../../src/core/survey/estimate.ts';
import { lineShape, workSurvey } from '../../../src/core/survey/index.ts';
import { factorise, nullDirections, solveFactors } from '../../../src/core/survey/leastSquares.ts';
import { rowSystem } from '../../../src/core/survey/rows.ts';
import { fortyReadings, gradeAt, readOff, spiral, standing, supports, surveyOf } from '../../core/survey/spiral.ts';

// Against ml-matrix 6 (singular value decomposition), which shares no code with the project.

const readings = readOff(spiral(standing({ 6: 2.8, 17: -2.2 })), fortyReadings, 1);

/** The equations of a survey as a matrix of rows over their deviations, with support 1 held. */
function held(input: ReturnType<typeof surveyOf>) {
  const { rows, others } = rowSystem(input, lineShape(input));
  const white = whiteSystem(rows, supports.length, others.length);
  const whole = Matrix.from1DArray(white.rows, white.columns, [...white.matrix]);
  const free = Array.from({ length: white.columns - 1 }, (_, j) => j + 1);
  return { white, matrix: whole.subMatrixColumn(free), right: Matrix.columnVector([...white.right]) };
}

describe('heights of a survey', () => {
  const input = surveyOf(readings);
  const { matrix, right } = held(input);
  const { estimate } = workSurvey(input);
  const inverse = pseudoInverse(matrix);

  it('are those of the pseudoinverse', () => {
    const solved = inverse.mmul(right).to1DArray();
    const own = estimate.supports.slice(1).map(({ departure }) => departure);
    own.forEach((departure, i) => {
      expect(departure).toBeCloseTo(solved[i], 11);
    });
  });

  it('have the covariance (AᵀA)⁻¹', () => {
    const covariance = inverse.mmul(inverse.transpose());
    const n = supports.length;
    const most = Math.max(...estimate.covariance);
    for (let i = 1; i < n; i++) {
      for (let j = 1; j < n; j++) {
        // Rounding of two factorisations whose condition is a few thousand.
        expect(Math.abs(estimate.covariance[i * n + j] - covariance.get(i - 1, j - 1))).toBeLessThan(1e-10 * most);
      }
    }
  });

  it('leave the same sum of squares', () => {
    const rest = Matrix.sub(right, matrix.mmul(inverse.mmul(right)));
    expect(estimate.chiSquare).toBeCloseTo(
      rest.to1DArray().reduce((sum, value) => sum + value * value, 0),
      8,
    );
  });
});

it('the rank and the loose directions of grades alone are those of the singular values', () => {
  const input = surveyOf(supports.slice(1, -2).map((s) => gradeAt(s + 0.2, 0.022)));
  const { rows, others } = rowSystem(input, lineShape(input));
  const white = whiteSystem(rows, supports.length, others.length);
  const factors = factorise(white);
  const { diagonal } = new SVD(Matrix.from1DArray(white.rows, white.columns, [...white.matrix]), {
    autoTranspose: true,
  });
  expect(factors.rank).toBe(diagonal.filter((value) => value > 1e-9 * diagonal[0]).length);
  for (const direction of nullDirections(factors)) {
    const size = Math.max(...direction.map(Math.abs));
    for (let i = 0; i < white.rows; i++) {
      let sum = 0;
      for (let j = 0; j < white.columns; j++) sum += white.matrix[i * white.columns + j] * direction[j];
      // Rows are of the size of 1/0.0006 a metre.
      expect(Math.abs(sum)).toBeLessThan(1e-8 * size * 6000);
    }
  }
});

it('the height of a triangle of levelling closes as in a textbook: three rises of 1.002, 2.003 and -2.999', () => {
  // A loop A-B-C-A must close to 0; it misses by 6 mm, and equal weights share 2 mm to each (surveying textbook practice, no source).
  const system = {
    rows: 3,
    columns: 2,
    matrix: Float64Array.from([1, 0, -1, 1, 0, -1]),
    right: Float64Array.from([1.002, 2.003, -2.999]),
  };
  const { values, covariance } = solveFactors(factorise(system));
  expect(values[0]).toBeCloseTo(1.0, 12);
  expect(values[1]).toBeCloseTo(3.001, 12);
  // Variance of a height in a triangle of unit variances: 2/3.
  expect(covariance[0]).toBeCloseTo(2 / 3, 12);
});
