/** A linear problem, rows already divided by their standard deviations. Row-major, `rows` × `columns`. */
export interface LinearSystem {
  readonly rows: number;
  readonly columns: number;
  readonly matrix: Float64Array;
  readonly right: Float64Array;
}

export interface Factors {
  readonly columns: number;
  readonly rank: number;
  /** Column of the matrix that stands k-th, the best determined first. */
  readonly order: readonly number[];
  /** Upper triangle of the factor, row-major columns × columns, of scaled columns. */
  readonly triangle: Float64Array;
  /** Length of each column of the matrix before scaling; 1 for an empty one. */
  readonly scale: Float64Array;
  /** Qᵀ·right, first `columns` entries. */
  readonly projected: Float64Array;
  /** Sum of squares that no parameters can take away. */
  readonly remainder: number;
}

/**
 * A column whose part that no earlier column covers is smaller than this share of it counts as covered: far above the rounding
 * of a few hundred rows, far below what any reading is worth.
 */
const covered = 1e-9;

/**
 * Least squares by Householder reflections with column exchange (Golub & Van Loan, Matrix Computations, 5.4), columns
 * scaled to length 1 so that the rank does not depend on units.
 */
export function factorise({ rows, columns, matrix, right }: LinearSystem): Factors {
  const a = Float64Array.from(matrix);
  const b = Float64Array.from(right);
  const scale = new Float64Array(columns).fill(1);
  for (let j = 0; j < columns; j++) {
    let sum = 0;
    for (let i = 0; i < rows; i++) sum += a[i * columns + j] * a[i * columns + j];
    if (sum > 0) scale[j] = Math.sqrt(sum);
    for (let i = 0; i < rows; i++) a[i * columns + j] /= scale[j];
  }
  const order = Array.from({ length: columns }, (_, j) => j);
  const steps = Math.min(rows, columns);
  let rank = 0;
  for (let k = 0; k < steps; k++) {
    const best = longestBelow(a, rows, columns, k);
    if (best.length <= covered) break;
    if (best.column !== k) exchange(a, rows, columns, k, best.column, order);
    reflect(a, b, rows, columns, k, best.length);
    rank = k + 1;
  }
  const triangle = new Float64Array(columns * columns);
  for (let i = 0; i < rank; i++) for (let j = i; j < columns; j++) triangle[i * columns + j] = a[i * columns + j];
  let remainder = 0;
  for (let i = rank; i < rows; i++) remainder += b[i] * b[i];
  const projected = new Float64Array(columns);
  for (let i = 0; i < rank; i++) projected[i] = b[i];
  return { columns, rank, order, triangle, scale, projected, remainder };
}

function longestBelow(a: Float64Array, rows: number, columns: number, k: number): { column: number; length: number } {
  let column = k;
  let most = -1;
  for (let j = k; j < columns; j++) {
    let sum = 0;
    for (let i = k; i < rows; i++) sum += a[i * columns + j] * a[i * columns + j];
    if (sum > most) {
      most = sum;
      column = j;
    }
  }
  return { column, length: Math.sqrt(most) };
}

function exchange(a: Float64Array, rows: number, columns: number, k: number, other: number, order: number[]): void {
  for (let i = 0; i < rows; i++) {
    const kept = a[i * columns + k];
    a[i * columns + k] = a[i * columns + other];
    a[i * columns + other] = kept;
  }
  [order[k], order[other]] = [order[other], order[k]];
}

function reflect(a: Float64Array, b: Float64Array, rows: number, columns: number, k: number, length: number): void {
  const alpha = a[k * columns + k] > 0 ? -length : length;
  const v = new Float64Array(rows - k);
  for (let i = k; i < rows; i++) v[i - k] = a[i * columns + k];
  v[0] -= alpha;
  let norm = 0;
  for (const one of v) norm += one * one;
  if (norm > 0) {
    for (let j = k; j < columns; j++) {
      let dot = 0;
      for (let i = k; i < rows; i++) dot += v[i - k] * a[i * columns + j];
      const factor = (2 * dot) / norm;
      for (let i = k; i < rows; i++) a[i * columns + j] -= factor * v[i - k];
    }
    let dot = 0;
    for (let i = k; i < rows; i++) dot += v[i - k] * b[i];
    const factor = (2 * dot) / norm;
    for (let i = k; i < rows; i++) b[i] -= factor * v[i - k];
  }
  a[k * columns + k] = alpha;
  for (let i = k + 1; i < rows; i++) a[i * columns + k] = 0;
}

/** Directions in which the parameters may move without any row noticing: one vector of `columns` entries each. */
export function nullDirections({ columns, rank, order, triangle, scale }: Factors): Float64Array[] {
  const directions: Float64Array[] = [];
  for (let free = rank; free < columns; free++) {
    const z = new Float64Array(columns);
    z[free] = 1;
    for (let i = rank - 1; i >= 0; i--) {
      let sum = -triangle[i * columns + free];
      for (let j = i + 1; j < rank; j++) sum -= triangle[i * columns + j] * z[j];
      z[i] = sum / triangle[i * columns + i];
    }
    const direction = new Float64Array(columns);
    for (let k = 0; k < columns; k++) direction[order[k]] = z[k] / scale[order[k]];
    directions.push(direction);
  }
  return directions;
}

export interface Solution {
  readonly values: Float64Array;
  /** columns × columns, row-major. */
  readonly covariance: Float64Array;
}

/** The parameters and their covariance, for rows of unit variance. Throws RangeError when the rank is not full. */
export function solveFactors({ columns, rank, order, triangle, scale, projected }: Factors): Solution {
  if (rank < columns) throw new RangeError(`${columns - rank} of ${columns} parameters cannot be told from the rows.`);
  // Inverse of the triangle, column by column; R⁻¹·R⁻ᵀ is the covariance.
  const inverse = new Float64Array(columns * columns);
  for (let j = 0; j < columns; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) sum -= triangle[i * columns + k] * inverse[k * columns + j];
      inverse[i * columns + j] = sum / triangle[i * columns + i];
    }
  }
  const values = new Float64Array(columns);
  const covariance = new Float64Array(columns * columns);
  for (let i = 0; i < columns; i++) {
    let value = 0;
    for (let k = i; k < columns; k++) value += inverse[i * columns + k] * projected[k];
    values[order[i]] = value / scale[order[i]];
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < columns; k++) sum += inverse[i * columns + k] * inverse[j * columns + k];
      sum /= scale[order[i]] * scale[order[j]];
      covariance[order[i] * columns + order[j]] = sum;
      covariance[order[j] * columns + order[i]] = sum;
    }
  }
  return { values, covariance };
}
