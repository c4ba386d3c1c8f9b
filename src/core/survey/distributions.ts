import { brent, exp, log } from '../math/index.ts';

/** Terms after which series and continued fraction have long settled, for up to some thousand degrees of freedom. */
const mostTerms = 10_000;

/** log Γ(a) for a = 1/2, 1, 3/2, …: Γ(a + 1) = a·Γ(a) from Γ(1/2) = √π or Γ(1) = 1. */
function logGammaHalves(a: number): number {
  let sum = Number.isInteger(a) ? 0 : log(Math.PI) / 2;
  for (let k = Number.isInteger(a) ? 1 : 0.5; k < a; k++) sum += log(k);
  return sum;
}

/**
 * Probability that χ² of `degrees` degrees of freedom is at least `value`: Q(degrees/2, value/2), by the series of
 * Abramowitz & Stegun 6.5.29 or the continued fraction 6.5.31 (modified Lentz).
 */
export function chiSquareTail(value: number, degrees: number): number {
  if (!(degrees > 0)) return 1;
  if (!(value > 0)) return 1;
  const a = degrees / 2;
  const x = value / 2;
  const front = exp(a * log(x) - x - logGammaHalves(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < mostTerms && term > sum * Number.EPSILON; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return 1 - front * sum;
  }
  // Lentz wants a start that is not nothing; this is nothing beside any term.
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < mostTerms; n++) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / nonZero(an * d + b, tiny);
    c = nonZero(b + an / c, tiny);
    const step = c * d;
    h *= step;
    if (Math.abs(step - 1) < Number.EPSILON) break;
  }
  return front * h;
}

const nonZero = (value: number, tiny: number): number => (Math.abs(value) < tiny ? tiny : value);

/** Probability that a standard normal is above `z`. */
export function normalTail(z: number): number {
  const half = chiSquareTail(z * z, 1) / 2;
  return z >= 0 ? half : 1 - half;
}

/** Larger than any quantile asked for: beyond it the tail is below 1e-300. */
const furthest = 37;

/** The z above which a standard normal lies with probability `tail`, 0 < tail < 1. */
export function normalQuantile(tail: number): number {
  if (!(tail > 0 && tail < 1)) throw new RangeError(`A probability lies between 0 and 1, and ${tail} does not.`);
  return brent((z) => normalTail(z) - tail, -furthest, furthest, 1e-12);
}
