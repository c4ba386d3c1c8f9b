/**
 * Solves (A + λ·diag A)·x = b for a positive semidefinite A of `size` rows (its lower half counts) by Cholesky's way; null when the damping does not
 * make it definite. What A does not touch at all stays 0.
 */
export function solveDamped(
  matrix: Float64Array,
  right: Float64Array,
  size: number,
  damping: number,
): Float64Array | null {
  const lower = Float64Array.from(matrix);
  const x = Float64Array.from(right);
  for (let p = 0; p < size; p++) {
    const diagonal = matrix[p * size + p];
    lower[p * size + p] = diagonal === 0 ? 1 : diagonal * (1 + damping);
  }
  for (let p = 0; p < size; p++) {
    for (let q = 0; q <= p; q++) {
      let sum = lower[p * size + q];
      for (let k = 0; k < q; k++) sum -= lower[p * size + k] * lower[q * size + k];
      if (q < p) lower[p * size + q] = sum / lower[q * size + q];
      else if (sum > 0) lower[p * size + p] = Math.sqrt(sum);
      else return null;
    }
    let sum = x[p];
    for (let k = 0; k < p; k++) sum -= lower[p * size + k] * x[k];
    x[p] = sum / lower[p * size + p];
  }
  for (let p = size - 1; p >= 0; p--) {
    let sum = x[p];
    for (let k = p + 1; k < size; k++) sum -= lower[k * size + p] * x[k];
    x[p] = sum / lower[p * size + p];
  }
  return x;
}
