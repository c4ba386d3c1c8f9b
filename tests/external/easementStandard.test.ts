import { describe, expect, it } from 'vitest';
import { easement, easementLengthForShift } from '../../src/core/track/index.ts';

/** NEM 113 (2016): every gauge has one fixed shift f, and the easement is √(24·f·R) long. */
describe('NEM 113 easements', () => {
  it('of Table 2 for 16.5 mm gauge give the fixed shift of 9 mm', () => {
    // NEM 113 (2016), Table 2, G = 16.5, f = 9 mm: R and L, printed to the nearest 5 mm.
    const table = [
      [350, 275],
      [400, 295],
      [500, 330],
      [600, 360],
      [700, 390],
      [800, 415],
      [1000, 465],
    ] as const;
    for (const [radiusMm, lengthMm] of table) {
      expect(Math.abs(easementLengthForShift(radiusMm / 1000, 0.009) * 1000 - lengthMm)).toBeLessThanOrEqual(2.5);
    }
  });

  it('are √(24·f·R) long to 0.2 % for every gauge of the standard at a radius of 40 gauges', () => {
    // NEM 113 (2016), table of gauges G and shifts f, mm.
    const gauges = [
      [6.5, 3],
      [9, 4],
      [12, 6],
      [16.5, 9],
      [22.5, 13],
      [32, 18],
      [45, 25],
      [64, 36],
    ] as const;
    for (const [gaugeMm, shiftMm] of gauges) {
      const radius = (40 * gaugeMm) / 1000;
      const shift = shiftMm / 1000;
      // At L/R near 0.6 the shift is L²/24R less 0.3 %, so the length is 0.16 % more than the formula.
      const ratio = easementLengthForShift(radius, shift) / Math.sqrt(24 * shift * radius);
      expect(ratio).toBeGreaterThan(1);
      expect(ratio).toBeLessThan(1.002);
    }
  });

  it('shift the arc by L²/24R where L is below 0.6 R', () => {
    // NEM 113 (2016), free choice of length: f = L²/(24R) for L/R < 0.6; 0.5 % is what the next term of the series allows.
    for (let ratio = 0.05; ratio < 0.6; ratio += 0.05) {
      expect(Math.abs(easement(0.5, ratio * 0.5).shift / ((ratio ** 2 * 0.5) / 24) - 1)).toBeLessThan(0.005);
    }
  });

  it('do not follow the standard’s 23 and 22 beyond that: for a clothoid the divisor rises', () => {
    // NEM 113 (2016) prints f = L²/(23R) for 0.6 to 0.8 and L²/(22R) above. Of a clothoid L²/(R·f) is 24.009, 24.077, 24.137
    // and 24.215 at L/R = 0.2, 0.6, 0.8 and 1.0 (Fresnel integrals at 40 digits, mpmath), so only the first rule is checked.
    const divisor = (ratio: number): number => ratio ** 2 / easement(1, ratio).shift;
    expect([0.2, 0.6, 0.8, 1].map(divisor)).toEqual([24.009, 24.077, 24.137, 24.215].map((d) => expect.closeTo(d, 3)));
  });
});
