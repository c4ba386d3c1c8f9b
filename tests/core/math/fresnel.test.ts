import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fresnel, gaussLegendre, integrate } from '../../../src/core/math/index.ts';
import { evenly } from '../../evenly.ts';

/** The definition itself, by panels short enough that a 16-point rule is exact to rounding: an eighth of a swing each. */
function byDefinition(x: number): { c: number; s: number } {
  const rule = gaussLegendre(16);
  const panels = Math.ceil(2 * x * x) + 1;
  let c = 0;
  let s = 0;
  for (let i = 0; i < panels; i++) {
    const low = (i * x) / panels;
    const high = ((i + 1) * x) / panels;
    c += integrate((t) => Math.cos((Math.PI / 2) * t * t), low, high, rule);
    s += integrate((t) => Math.sin((Math.PI / 2) * t * t), low, high, rule);
  }
  return { c, s };
}

describe('fresnel', () => {
  it('agrees with its defining integrals over series and continued fraction', () => {
    // 1e-13: the quadrature itself sums up to 130 panels of rounding.
    for (const x of [0.05, 0.4, 0.9, 1.3, 1.5999, 1.6, 1.6001, 1.9, 2.3, 3.1, 4.7, 6.2, 8]) {
      const expected = byDefinition(x);
      const found = fresnel(x);
      expect(Math.abs(found.c - expected.c)).toBeLessThan(1e-13);
      expect(Math.abs(found.s - expected.s)).toBeLessThan(1e-13);
    }
  });

  it('matches values of 60-digit arithmetic far out, where the phase is easily lost', () => {
    // mpmath 1.3, fresnelc and fresnels at 60 digits of the doubles named.
    const far: [number, number, number][] = [
      [1e4, 0.4999999999998987, 0.4999681690113816],
      [123456.789, 0.4999992398522264, 0.5000024637082502],
      [98765432.1, 0.5000000030101093, 0.5000000011516278],
    ];
    for (const [x, c, s] of far) {
      expect(Math.abs(fresnel(x).c - c)).toBeLessThan(1e-15);
      expect(Math.abs(fresnel(x).s - s)).toBeLessThan(1e-15);
    }
  });

  it('is odd, vanishes at 0, reaches 1/2 at infinity and passes NaN on', () => {
    expect(fresnel(0)).toEqual({ c: 0, s: 0 });
    expect(fresnel(Number.POSITIVE_INFINITY)).toEqual({ c: 0.5, s: 0.5 });
    expect(fresnel(Number.NEGATIVE_INFINITY)).toEqual({ c: -0.5, s: -0.5 });
    expect(fresnel(1e17)).toEqual({ c: 0.5, s: 0.5 });
    expect(fresnel(Number.NaN).c).toBeNaN();
    fc.assert(
      fc.property(evenly(-50, 50), (x) => {
        expect(fresnel(-x).c + fresnel(x).c).toBe(0);
        expect(fresnel(-x).s + fresnel(x).s).toBe(0);
      }),
    );
  });

  it('keeps relative accuracy near 0, where C is x and S is πx³/6', () => {
    for (const x of [1e-3, 1e-8, 1e-60]) {
      expect(fresnel(x).c / x).toBeCloseTo(1, 11);
      expect(fresnel(x).s / ((Math.PI / 6) * x ** 3)).toBeCloseTo(1, 11);
    }
  });

  it('writes into the object given', () => {
    const out = { c: 9, s: 9 };
    expect(fresnel(0.5, out)).toBe(out);
    expect(out.c).toBeCloseTo(0.4923442258714464, 15);
  });
});
