import { describe, expect, it } from 'vitest';
import { gaussLegendre, integrate } from '../../../src/core/math/index.ts';

describe('gaussLegendre', () => {
  it('gives the textbook two- and three-point rules', () => {
    const two = gaussLegendre(2);
    expect(two.nodes[1]).toBeCloseTo(1 / Math.sqrt(3), 15);
    expect(two.weights[0]).toBeCloseTo(1, 15);
    const three = gaussLegendre(3);
    expect([...three.nodes].map((x) => x * x * 5)).toEqual([expect.closeTo(3, 14), 0, expect.closeTo(3, 14)]);
    expect([...three.weights].map((w) => w * 9)).toEqual([
      expect.closeTo(5, 14),
      expect.closeTo(8, 14),
      expect.closeTo(5, 14),
    ]);
  });

  it('gives one point in the middle', () => {
    const one = gaussLegendre(1);
    expect([one.nodes[0], one.weights[0]]).toEqual([0, expect.closeTo(2, 15)]);
  });

  it('is exact for every power up to 2n - 1 and not for 2n', () => {
    for (const n of [1, 2, 5, 8, 16]) {
      const rule = gaussLegendre(n);
      for (let power = 0; power <= 2 * n - 1; power++) {
        expect(integrate((x) => x ** power, 0, 1, rule)).toBeCloseTo(1 / (power + 1), 14);
      }
    }
    // By the error term of the rule, 2^(2n+1) (n!)^4 / ((2n+1) ((2n)!)^2): 8/45 for n = 2 on [-1, 1].
    expect(2 / 5 - integrate((x) => x ** 4, -1, 1, gaussLegendre(2))).toBeCloseTo(8 / 45, 14);
  });

  it('integrates over any interval, either way round', () => {
    const rule = gaussLegendre(12);
    expect(integrate(Math.exp, 1, 3, rule)).toBeCloseTo(Math.exp(3) - Math.E, 12);
    expect(integrate(Math.exp, 3, 1, rule)).toBeCloseTo(Math.E - Math.exp(3), 12);
  });

  it('refuses a rule without points', () => {
    expect(() => gaussLegendre(0)).toThrow(RangeError);
    expect(() => gaussLegendre(2.5)).toThrow(RangeError);
  });
});
