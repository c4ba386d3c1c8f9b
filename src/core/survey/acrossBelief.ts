import { type SeededRandom, seededRandom } from '../math/index.ts';
import type { AcrossBelief } from './types.ts';

/** A reading across the rails as it counts here: lean beside the plan as read, its variance without the zero, and whose zero it has. */
export interface LeanReading {
  readonly lean: number;
  readonly variance: number;
  /** Index into the zeros; -1: its instrument has none. */
  readonly zero: number;
}

/**
 * What is believed of the lean at places, from their readings, from how closely a deck is set, and from how large zero errors are:
 * the mean and deviation of normal distributions joined by the zeros. `priors` holds the variance of a place before it was read
 * (Infinity: nothing known), `zeros` that of each zero error, which must be above 0.
 *
 * Given the zeros the places are independent, so the zeros are solved first, from the normal equations with the places taken
 * out (Schur complement), and the places follow from them.
 */
export function acrossBelief(
  places: readonly (readonly LeanReading[])[],
  priors: readonly number[],
  zeros: readonly number[],
): AcrossBelief {
  const n = zeros.length;
  const matrix = Float64Array.from({ length: n * n }, (_, k) => (k % (n + 1) === 0 ? 1 / zeros[k / (n + 1)] : 0));
  const right = new Float64Array(n);
  const weighed = places.map((readings, p) => {
    const byZero = new Float64Array(n);
    const sums = new Float64Array(n);
    let weight = 1 / priors[p];
    let sum = 0;
    for (const { lean, variance, zero } of readings) {
      weight += 1 / variance;
      sum += lean / variance;
      if (zero < 0) continue;
      byZero[zero] += 1 / variance;
      sums[zero] += lean / variance;
    }
    for (let i = 0; i < n; i++) {
      matrix[i * n + i] += byZero[i];
      right[i] += sums[i] - (byZero[i] * sum) / weight;
      for (let j = 0; j < n; j++) matrix[i * n + j] -= (byZero[i] * byZero[j]) / weight;
    }
    return { sum, weight, shares: byZero.map((w) => w / weight) };
  });
  const lower = factor(matrix, n);
  const found = back(lower, forth(lower, right, n), n);
  const mean = Float64Array.from(weighed, ({ sum, weight, shares }) =>
    shares.reduce((value, share, i) => value - share * found[i], sum / weight),
  );
  // A unit along factor k moves the zeros by the k-th column of the inverse transposed triangle.
  const shared = zeros.map((_, k) => {
    const unit = new Float64Array(n);
    unit[k] = 1;
    const moved = back(lower, unit, n);
    return Float64Array.from(weighed, ({ shares }) => shares.reduce((sum, share, i) => sum - share * moved[i], 0));
  });
  return { mean, own: Float64Array.from(weighed, ({ weight }) => Math.sqrt(1 / weight)), shared };
}

/** Leans as they may be: `count` draws over all places, decided by the seed alone. */
export function drawLeans({ mean, own, shared }: AcrossBelief, count: number, seed: number): Float64Array[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => drawn(mean, own, shared, random));
}

function drawn(
  mean: Float64Array,
  own: Float64Array,
  shared: AcrossBelief['shared'],
  random: SeededRandom,
): Float64Array {
  const factors = shared.map(() => random.normal());
  return mean.map((value, p) =>
    shared.reduce((sum, moved, k) => sum + moved[p] * factors[k], value + own[p] * random.normal()),
  );
}

/** Lower triangle L of a positive definite matrix L·Lᵀ (Cholesky). */
function factor(matrix: Float64Array, n: number): Float64Array {
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j];
      for (let k = 0; k < j; k++) sum -= lower[i * n + k] * lower[j * n + k];
      lower[i * n + j] = i === j ? Math.sqrt(sum) : sum / lower[j * n + j];
    }
  }
  return lower;
}

/** Solves L·y = b. */
function forth(lower: Float64Array, b: Float64Array, n: number): Float64Array {
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let j = 0; j < i; j++) sum -= lower[i * n + j] * y[j];
    y[i] = sum / lower[i * n + i];
  }
  return y;
}

/** Solves Lᵀ·x = y. */
function back(lower: Float64Array, y: Float64Array, n: number): Float64Array {
  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let sum = y[i];
    for (let j = i + 1; j < n; j++) sum -= lower[j * n + i] * x[j];
    x[i] = sum / lower[i * n + i];
  }
  return x;
}
