import { describe, expect, it } from 'vitest';
import { fresnel } from '../../src/core/math/index.ts';

describe('Fresnel integrals', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions, Table 7.7, C(x) and S(x) in the πt²/2 convention of 7.3.1 and
  // 7.3.2 (DLMF 7.2.7, 7.2.8 is the same). Half a unit of the tenth decimal is the tolerance.
  const table: [x: number, c: number, s: number][] = [
    [0.1, 0.0999975326, 0.0005235895],
    [0.3, 0.2994009761, 0.014116998],
    [0.5, 0.4923442259, 0.0647324329],
    [0.7, 0.6596523519, 0.1721364579],
    [1.0, 0.7798934004, 0.4382591474],
    [1.5, 0.445261176, 0.6975049601],
    [2.0, 0.4882534061, 0.3434156784],
  ];

  it.each(table)('at %f are %f and %f', (x, c, s) => {
    expect(Math.abs(fresnel(x).c - c)).toBeLessThanOrEqual(5.1e-11);
    expect(Math.abs(fresnel(x).s - s)).toBeLessThanOrEqual(5.1e-11);
  });
});
