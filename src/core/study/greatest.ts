import type { StudyHooks } from './hooks.ts';

/** The greatest whole number that passes. */
export interface Greatest {
  /** -1: not even 0 passes. */
  readonly passes: number;
  /** The least number above it found to fail; null where the greatest asked about still passes. */
  readonly fails: number | null;
  /** How many times a quick look or a full trial was made. */
  readonly looks: { readonly quick: number; readonly full: number };
  /** False when the study was stopped before its end: what is said is then only what was known. */
  readonly whole: boolean;
}

/**
 * The greatest whole number from 0 to `most` that passes in full, where more is harder: halving by quick looks, then full trials from there on, so that the answer passes in full and the next number fails in full.
 */
export async function greatestWhole(
  most: number,
  quick: (count: number) => Promise<boolean>,
  full: (count: number) => Promise<boolean>,
  hooks: StudyHooks = {},
): Promise<Greatest> {
  if (!(Number.isInteger(most) && most >= 0))
    throw new RangeError(`The most asked about is a whole number, not ${most}.`);
  const looks = { quick: 0, full: 0 };
  const stopped = (): boolean => hooks.stopped?.() ?? false;
  let low = -1;
  let high = most + 1;
  while (high - low > 1 && !stopped()) {
    const middle = (low + high) >> 1;
    looks.quick++;
    if (await quick(middle)) low = middle;
    else high = middle;
  }
  // From the guess away in strides that double, until what passes and what fails lie on either side of it; then halving in full.
  let passes = -1;
  let fails: number | null = null;
  let stride = 1;
  for (let next = Math.max(low, 0); !stopped(); ) {
    looks.full++;
    if (await full(next)) passes = Math.max(passes, next);
    else fails = Math.min(fails ?? next, next);
    if (passes === most || fails === passes + 1) break;
    if (fails === null) next = Math.min(most, next + stride);
    else if (passes < 0) next = Math.max(0, next - stride);
    else next = (passes + fails) >> 1;
    stride *= 2;
  }
  const whole = passes === most || (fails !== null && fails === passes + 1);
  return { passes, fails, looks, whole };
}
