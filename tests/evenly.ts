import fc from 'fast-check';

/** Parts a range is divided into: finer than anything measured. */
const parts = 2 ** 30;

/**
 * A number of a range, all of it as likely, its ends and 0 tried often. Where sizes matter this is what to draw from: `fc.double` spreads over exponents, so
 * that of a range about 0 nine draws in ten are below a millionth of a millionth, which is 0 to most of mechanics.
 */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  const part = (max - min) / parts;
  const whole = { min: Math.ceil(min / part), max: Math.floor(max / part) };
  return fc.integer(whole).map((count) => Math.min(Math.max(count * part, min), max));
}
