import { describe, expect, it } from 'vitest';
import {
  bufferPlaceMm,
  carWeightOz,
  clearHeight,
  easementLength,
  easementShiftMm,
  flangeH0Mm,
  gaugeLimitsMm,
  gaugeMm,
  leastMassGPerMm,
  leastRadiusH0Mm,
  leastRadiusOfWheelbase,
  mostCant,
  mostCantMm,
  radiusWithoutEasement,
  setTrackRadii00Mm,
  straightSpacingH0Mm,
  straightSpacingNMm,
  structureGaugeMm,
  wheelsetMm,
} from '../../../src/core/stock/index.ts';

describe('NEM 102 (2017): clear height', () => {
  it('is 59 mm in H0 without wire and 65 mm to a wire', () => {
    expect(clearHeight('H0', false)).toBe(0.059);
    expect(clearHeight('H0', true)).toBe(0.065);
  });

  it('lets trains under a turn 3 in above, but no wire', () => {
    // Source: an HO helix builder's figures: 3 in less 1/8 roadbed, 5/32 deck and 0.175 track leave 2.544 in.
    const clear = (3 - 1 / 8 - 5 / 32 - 0.175) * 0.0254;
    expect(clear / 0.0254).toBeCloseTo(2.544, 3);
    expect(clear).toBeGreaterThan(clearHeight('H0', false));
    expect(clear).toBeLessThan(clearHeight('H0', true));
  });
});

describe('NEM 111 (2016): least radii', () => {
  it('keeps a rigid wheelbase within 12 degrees: 2.405 times its length', () => {
    // Source: par. 2.1; 1/(2 sin 12°) = 2.405.
    expect(leastRadiusOfWheelbase(1)).toBeCloseTo(2.405, 3);
  });

  it('prints H0 radii that are whole multiples of the gauge', () => {
    // Source: 22/25/30 G at the least, 35/40/45 G on main lines; printed to the millimetre.
    expect(Object.values(leastRadiusH0Mm['least-permitted'])).toEqual(
      [22, 25, 30].map((x) => Math.floor(x * gaugeMm.H0)),
    );
    const { A, B, C } = leastRadiusH0Mm.main;
    expect([A, B, C]).toEqual([35, 40, 45].map((x) => Math.floor(x * gaugeMm.H0)));
  });
});

describe('NEM 113 (2016): easements', () => {
  it.each([
    [350, 275],
    [400, 295],
    [500, 330],
    [600, 360],
    [700, 390],
    [800, 415],
    [1000, 465],
  ])('Table 2, 16.5 mm gauge, radius %i mm: %i mm, printed to the nearest 5', (radiusMm, lengthMm) => {
    expect(Math.abs(easementLength('H0', radiusMm / 1000) * 1000 - lengthMm)).toBeLessThanOrEqual(2.5);
  });

  it('needs none above 990 mm in H0', () => {
    expect(radiusWithoutEasement('H0')).toBeCloseTo(0.99, 12);
  });
});

describe('NEM 114 (2007): cant', () => {
  // Source: the norm's print: at most G/15, in mm for its eight gauges.
  it.each([
    [6.5, 0.4],
    [9, 0.6],
    [12, 0.8],
    [16.5, 1],
    [22.5, 1.5],
    [32, 2],
    [45, 3],
    [64, 4],
  ])('gauge %d mm: at most %d mm', (gauge, cant) => {
    expect(mostCant(gauge / 1000)).toBeCloseTo(cant / 1000, 12);
  });

  it('prints a fifteenth of the gauge, rounded down to a step no finer than 0.1 mm', () => {
    for (const [scale, cant] of Object.entries(mostCantMm)) {
      const share = gaugeMm[scale as keyof typeof gaugeMm] / 15;
      expect(cant).toBeLessThanOrEqual(share + 1e-12);
      expect(share - cant).toBeLessThan(0.3);
    }
  });

  it('allows a fifteenth of a gauge it does not print: 1.2 mm on 18 mm', () => {
    expect(mostCant(0.018)).toBeCloseTo(0.0012, 12);
  });
});

describe('tables over all scales', () => {
  // Source: NEM 102, 113, 302 and 303 and NMRA RP-20.1 as printed. Every dimension grows with the scale, so a slip of a row or a digit shows.
  const growing = (values: readonly number[]): void => {
    expect(values).toEqual([...values].sort((a, b) => a - b));
    expect(new Set(values).size).toBe(values.length);
  };
  const scales = ['Z', 'N', 'TT', 'H0', 'S', '0', 'I'] as const;

  it('grow from Z to I', () => {
    growing(scales.map((s) => gaugeMm[s]));
    for (const key of Object.keys(structureGaugeMm.H0) as (keyof typeof structureGaugeMm.H0)[]) {
      growing(scales.map((s) => structureGaugeMm[s][key]));
    }
    growing(scales.map((s) => easementShiftMm[s]));
    growing(scales.map((s) => leastMassGPerMm[s]));
    for (const key of ['spacing', 'height', 'uMin'] as const) growing(scales.map((s) => bufferPlaceMm[s][key]));
    // S and HO have the same weight per inch.
    growing((['N', 'TT', 'HO', 'S', 'O'] as const).map((s) => carWeightOz[s].initial));
    growing((['N', 'TT', 'HO', 'O'] as const).map((s) => carWeightOz[s].perInch));
  });

  it('have a structure gauge that rises through its heights and narrows to its foot and to its top', () => {
    for (const s of scales) {
      const g = structureGaugeMm[s];
      growing([g.bl2, g.bl3, g.bl1]);
      growing([g.hl1, g.hl2, g.hl3, g.hl4, g.hl5]);
      growing([g.bl5, g.bl4, g.bl3]);
    }
  });
});

describe('gauges', () => {
  it('of American and European track for one scale admit each other', () => {
    // Source: NMRA S-3.2 gives 16.5 to 17.1 mm for HO, and 22.42 to 22.99 for S.
    expect(gaugeMm.H0).toBeGreaterThanOrEqual(gaugeLimitsMm.HO[0]);
    expect(gaugeMm.H0).toBeLessThanOrEqual(gaugeLimitsMm.HO[1]);
    expect(gaugeMm.S).toBeGreaterThanOrEqual(gaugeLimitsMm.S[0]);
    expect(gaugeMm.S).toBeLessThanOrEqual(gaugeLimitsMm.S[1]);
  });

  it('of set track are laid 67 mm apart', () => {
    // Source: a UK builder's notes, 2007: 371, 438, 505 and 572 mm.
    setTrackRadii00Mm.slice(1).forEach((radius, i) => {
      expect(radius - setTrackRadii00Mm[i]).toBe(67);
    });
  });

  it('are spaced wider in stations than on the line', () => {
    // Source: NEM 112, H0 46 and 52 mm, N 25 and 28 mm; in both 1.1 to 1.2 times.
    for (const spacing of [straightSpacingH0Mm, straightSpacingNMm]) {
      expect(spacing.station / spacing.line).toBeGreaterThan(1.1);
      expect(spacing.station / spacing.line).toBeLessThan(1.2);
    }
  });
});

describe('NEM 310 (2009): wheelsets', () => {
  it('have flanges that, with the back-to-back, make up the check dimension', () => {
    // K = B + T between the extremes: 14.4 + 0.7 and 14.6 + 0.7 are 15.1 and 15.3 mm.
    const [least, most] = wheelsetMm[16.5].check;
    const [b0, b1] = wheelsetMm[16.5].backToBack;
    expect(b0 + flangeH0Mm.thickness[0]).toBeCloseTo(least, 12);
    expect(b1 + flangeH0Mm.thickness[0]).toBeCloseTo(most, 12);
  });

  it('fit on their gauge: back to back, then check face and flange, then gauge', () => {
    for (const [gauge, set] of Object.entries(wheelsetMm)) {
      expect(set.backToBack[1]).toBeLessThan(set.check[0]);
      expect(set.check[1]).toBeLessThan(Number(gauge));
    }
  });
});
