/**
 * Solves a tridiagonal system of n equations by elimination with row exchange, so a zero on the diagonal is allowed.
 *
 * Row i reads `lower[i]·x[i-1] + diagonal[i]·x[i] + upper[i]·x[i+1] = right[i]`; `lower[0]` and `upper[n-1]` are
 * ignored. The inputs are left alone. Throws RangeError when the matrix is singular. Exchanging neighbouring rows
 * fills one more diagonal above, as in any textbook on banded elimination.
 */
export function solveTridiagonal(
  lower: ArrayLike<number>,
  diagonal: ArrayLike<number>,
  upper: ArrayLike<number>,
  right: ArrayLike<number>,
): Float64Array {
  const n = diagonal.length;
  const below = Float64Array.from(lower);
  const pivot = Float64Array.from(diagonal);
  const above = Float64Array.from(upper);
  const fill = new Float64Array(n);
  const x = Float64Array.from(right);
  for (let i = 0; i + 1 < n; i++) {
    if (Math.abs(below[i + 1]) > Math.abs(pivot[i])) {
      [pivot[i], below[i + 1]] = [below[i + 1], pivot[i]];
      [above[i], pivot[i + 1]] = [pivot[i + 1], above[i]];
      if (i + 2 < n) {
        fill[i] = above[i + 1];
        above[i + 1] = 0;
      }
      [x[i], x[i + 1]] = [x[i + 1], x[i]];
    }
    if (pivot[i] === 0) throw new RangeError(`The tridiagonal system is singular at row ${i}.`);
    const factor = below[i + 1] / pivot[i];
    pivot[i + 1] -= factor * above[i];
    if (i + 2 < n) above[i + 1] -= factor * fill[i];
    x[i + 1] -= factor * x[i];
  }
  if (n > 0 && pivot[n - 1] === 0) throw new RangeError(`The tridiagonal system is singular at row ${n - 1}.`);
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i];
    if (i + 1 < n) sum -= above[i] * x[i + 1];
    if (i + 2 < n) sum -= fill[i] * x[i + 2];
    x[i] = sum / pivot[i];
  }
  return x;
}
