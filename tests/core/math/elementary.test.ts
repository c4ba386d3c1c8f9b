import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asin, asinh, atan, atan2, cos, exp, hypot, log, sin, tan } from '../../../src/core/math/index.ts';

/** Difference in units of the last place of `b`, with a floor where b passes through zero. */
const units = (a: number, b: number, floor = 0) =>
  a === b ? 0 : Math.abs(a - b) / (2 ** -52 * Math.max(Math.abs(b), floor));

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const agrees = (
  range: fc.Arbitrary<number>,
  ours: (x: number) => number,
  theirs: (x: number) => number,
  ulps: number,
  floor = 0,
) =>
  fc.assert(
    fc.property(range, (x) => {
      expect(units(ours(x), theirs(x), floor)).toBeLessThanOrEqual(ulps);
    }),
    { numRuns: 2000 },
  );

describe('elementary functions of our own', () => {
  // The engine's Math is the reference: an independent implementation, good to about a unit in the last place.
  it('sin, cos and tan agree with Math over hundreds of turns', () => {
    agrees(between(-1e3, 1e3), sin, Math.sin, 2, 1e-3);
    agrees(between(-1e3, 1e3), cos, Math.cos, 2, 1e-3);
    agrees(between(-1.5, 1.5), tan, Math.tan, 4, 1e-280);
  });

  it('keeps every digit of a sine that all but vanishes: 355 is 113 half turns and 0.00003', () => {
    expect(units(sin(355), Math.sin(355), 1e-280)).toBeLessThanOrEqual(2);
    expect(sin(355)).toBeCloseTo(-3.0144353359e-5, 15);
  });

  it('atan, atan2 and asin agree with Math', () => {
    agrees(between(-50, 50), atan, Math.atan, 4, 1e-280);
    agrees(between(-1, 1), asin, Math.asin, 4, 1e-3);
    fc.assert(
      fc.property(between(-5, 5), between(-5, 5), (y, x) => {
        // The origin has no direction; signs of zero are the engine's business.
        fc.pre(x !== 0 || y !== 0);
        expect(units(atan2(y, x), Math.atan2(y, x), 1e-3)).toBeLessThanOrEqual(4);
      }),
    );
  });

  it('exp, log and asinh agree with Math', () => {
    agrees(between(-50, 50), exp, Math.exp, 4);
    agrees(between(1e-9, 1e9), log, Math.log, 4, 1e-2);
    agrees(between(-30, 30), asinh, Math.asinh, 4, 1e-280);
  });

  it('hits the values everybody knows', () => {
    expect(sin(0)).toBe(0);
    expect(cos(0)).toBe(1);
    expect(sin(Math.PI / 6)).toBeCloseTo(0.5, 15);
    expect(cos(Math.PI)).toBe(-1);
    expect(4 * atan(1)).toBeCloseTo(Math.PI, 15);
    expect(atan2(0, -1)).toBe(Math.PI);
    expect(exp(1)).toBeCloseTo(Math.E, 14);
    expect(exp(-1000)).toBe(0);
    // What double numbers hold only with lost digits counts as nothing, as the docstring says.
    expect(exp(-709)).toBe(0);
    expect(exp(-707)).toBeGreaterThan(0);
    expect(exp(710)).toBe(Number.POSITIVE_INFINITY);
    expect([atan2(0, 0), atan2(2, 0), atan2(-2, 0)]).toEqual([0, Math.PI / 2, -Math.PI / 2]);
    expect(log(1)).toBe(0);
    expect(log(8)).toBeCloseTo(3 * Math.LN2, 15);
    expect(hypot(3, 4)).toBe(5);
    expect(hypot(2, 3, 6)).toBe(7);
  });
});
