import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brent, newton } from '../../../src/core/math/index.ts';
import { evenly } from '../../evenly.ts';

describe('brent', () => {
  it('finds known roots to rounding', () => {
    expect(brent((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    // The number that is its own cosine (the Dottie number, OEIS A003957).
    expect(brent((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 15);
    expect(brent((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815423265, 14);
  });

  it('survives flat and steep functions within a modest number of calls', () => {
    let calls = 0;
    const counted = (x: number): number => {
      calls++;
      return Math.atan(1e6 * (x - 0.3));
    };
    expect(brent(counted, -1e3, 1e3)).toBeCloseTo(0.3, 12);
    expect(calls).toBeLessThan(120);
    expect(Math.abs(brent((x) => x ** 9, -1, 1.5))).toBeLessThan(1e-6);
  });

  it('takes ends that are roots, stops at its tolerance, and refuses an interval without a change of sign', () => {
    expect(brent((x) => x - 1, 1, 4)).toBe(1);
    expect(brent((x) => x - 4, 1, 4)).toBe(4);
    let calls = 0;
    brent(
      (x) => {
        calls++;
        return x ** 3 - 0.1;
      },
      -4,
      4,
      0.1,
    );
    expect(calls).toBeLessThan(14);
    expect(() => brent((x) => x * x + 1, -1, 1)).toThrow(RangeError);
    expect(() => brent(() => Number.NaN, -1, 1)).toThrow(RangeError);
  });
});

describe('newton', () => {
  it('finds known roots to rounding', () => {
    expect(
      newton(
        (x) => x * x - 2,
        (x) => 2 * x,
        0,
        2,
      ),
    ).toBeCloseTo(Math.SQRT2, 15);
    expect(
      newton(
        (x) => Math.cos(x) - x,
        (x) => -Math.sin(x) - 1,
        0,
        1,
        0.9,
      ),
    ).toBeCloseTo(0.7390851332151607, 15);
  });

  it('converges where plain Newton would run away', () => {
    // Newton on atan from 3 diverges; on the cube root it doubles its distance every step.
    expect(newton(Math.atan, (x) => 1 / (1 + x * x), -4, 10, 3)).toBeCloseTo(0, 12);
    expect(newton(Math.cbrt, (x) => 1 / (3 * Math.cbrt(x) ** 2), -1, 5, 2)).toBeCloseTo(0, 12);
    expect(
      newton(
        (x) => x - 0.25,
        () => 0,
        0,
        1,
      ),
    ).toBeCloseTo(0.25, 12);
  });

  it('never asks beyond the ends, also where the slope points past one by a short step', () => {
    // Root 0.2. From 0.99 the slope points to 1.28, nearer than half the bracket.
    const asked: number[] = [];
    const hump = (x: number): number => {
      asked.push(x);
      return (x - 0.2) * (1.2 - x);
    };
    expect(newton(hump, (x) => 1.4 - 2 * x, 0, 1, 0.99)).toBeCloseTo(0.2, 12);
    expect(Math.max(...asked)).toBe(1);
    expect(Math.min(...asked)).toBe(0);
  });

  it('doubles its digits at every step: the root of 2 from 1.5 takes 4 of them, not the 50 of halving', () => {
    let calls = 0;
    const f = (x: number): number => {
      calls++;
      return x * x - 2;
    };
    expect(newton(f, (x) => 2 * x, 1, 2, 1.5)).toBeCloseTo(Math.SQRT2, 15);
    // Both ends, the guess, and errors of 2.5e-3, 2e-6, 1.6e-12, 0.
    expect(calls).toBeLessThanOrEqual(8);
  });

  it('takes ends that are roots and refuses an interval without a change of sign', () => {
    expect(
      newton(
        (x) => x,
        () => 1,
        0,
        1,
      ),
    ).toBe(0);
    expect(
      newton(
        (x) => x - 1,
        () => 1,
        0,
        1,
      ),
    ).toBe(1);
    expect(() =>
      newton(
        (x) => x + 5,
        () => 1,
        0,
        1,
      ),
    ).toThrow(RangeError);
  });

  it('agrees with brent on any monotone cubic', () => {
    const positive = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(positive, positive, evenly(-50, 50), (a, b, c) => {
        const f = (x: number): number => a * x ** 3 + b * x + c;
        const x = newton(f, (t) => 3 * a * t * t + b, -1e4, 1e4);
        // Both stop at rounding of f, which is 1e-16 of its greatest term over the slope.
        expect(Math.abs(x - brent(f, -1e4, 1e4))).toBeLessThan(1e-10);
      }),
    );
  });
});
