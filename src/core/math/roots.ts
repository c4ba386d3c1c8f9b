/** More steps than halving a double's whole range would need; reaching it means the function returns NaN. */
const MOST_STEPS = 2200;

function refuseUnbracketed(low: number, high: number, atLow: number, atHigh: number): void {
  if (!(atLow * atHigh <= 0)) {
    throw new RangeError(`No change of sign between ${low} (value ${atLow}) and ${high} (value ${atHigh}).`);
  }
}

/**
 * A root of `f` between `low` and `high`, where it must change sign, to within `tolerance` in x.
 *
 * Brent's method (Brent 1973, ch. 4): inverse quadratic or secant steps, halving where they do not help. Throws
 * RangeError when the ends do not bracket a root.
 */
export function brent(f: (x: number) => number, low: number, high: number, tolerance = 0): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  refuseUnbracketed(low, high, fa, fb);
  let c = a;
  let fc = fa;
  let step = b - a;
  let before = step;
  for (let i = 0; i < MOST_STEPS; i++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= least || fb === 0) return b;
    if (Math.abs(before) < least || Math.abs(fa) <= Math.abs(fb)) {
      step = before = half;
    } else {
      const s = fb / fa;
      let p = 2 * half * s;
      let q = 1 - s;
      if (a !== c) {
        const u = fa / fc;
        const v = fb / fc;
        p = s * (2 * half * u * (u - v) - (b - a) * (v - 1));
        q = (u - 1) * (v - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(least * q), Math.abs(before * q))) {
        before = step;
        step = p / q;
      } else {
        step = before = half;
      }
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > least ? step : Math.sign(half) * least;
    fb = f(b);
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = before = b - a;
    }
  }
  throw new RangeError(`No root found between ${low} and ${high}.`);
}

/**
 * A root of `f` between `low` and `high`, where it must change sign, by Newton's method with `slope` = f′.
 *
 * A step that would leave the bracket, or is not half the step before, is replaced by halving, so it cannot diverge.
 * Stops when a step is below `tolerance` in x. Throws RangeError when the ends do not bracket a root.
 */
export function newton(
  f: (x: number) => number,
  slope: (x: number) => number,
  low: number,
  high: number,
  guess = (low + high) / 2,
  tolerance = 0,
): number {
  const atLow = f(low);
  const atHigh = f(high);
  refuseUnbracketed(low, high, atLow, atHigh);
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  let negative = atLow < 0 ? low : high;
  let positive = atLow < 0 ? high : low;
  let x = guess;
  let last = Math.abs(high - low);
  for (let i = 0; i < MOST_STEPS; i++) {
    const value = f(x);
    if (value === 0) return x;
    if (value < 0) negative = x;
    else positive = x;
    let next = x - value / slope(x);
    const inside = (next - negative) * (next - positive) < 0;
    if (!inside || Math.abs(next - x) > last / 2) next = (negative + positive) / 2;
    last = Math.abs(next - x);
    if (last <= tolerance || last <= Number.EPSILON * Math.abs(next)) return next;
    x = next;
  }
  throw new RangeError(`No root found between ${low} and ${high}.`);
}
