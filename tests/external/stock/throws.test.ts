import { describe, expect, it } from 'vitest';
import {
  centreThrowHandbook,
  curvedSpacingH0Mm,
  endThrowHandbook,
  modelBodyMm,
  placeVehicle,
  pointOnVehicle,
  prototypeCoach,
  trackSpacingH0,
  wideningH0,
  wideningH0Mm,
} from '../../../src/core/stock/index.ts';
import { arc } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

/** Throws of a vehicle really placed on a curve, in the unit of its lengths. */
function placedThrows(length: number, pivots: number, radius: number): { centre: number; end: number } {
  const track = sampleTrack([arc(radius, 2)]);
  const vehicle = sampleVehicle({ pivotSpacing: pivots, overhang: (length - pivots) / 2 });
  const placed = placeVehicle(track, vehicle, radius);
  const out = (ahead: number) => {
    const p = pointOnVehicle(placed, ahead, 0, 0);
    return Math.hypot(p[0], p[1] - radius) - radius;
  };
  return { centre: -out(0), end: out(length / 2) };
}

describe('throws of coaches', () => {
  // Source: the geometry of a chord in a circle, R - √(R² - a²/4) and √(R² - a²/4 + L²/4) - R, worked with a calculator to
  // three decimals; a figure is good to half its last digit.
  it.each([
    { name: 'H0, 312.6 over body', length: 0.3126, pivots: 0.2241, radius: 0.5, centre: 12.717, end: 11.737 },
    { name: 'H0, 312.6 over body', length: 0.3126, pivots: 0.2241, radius: 0.45, centre: 14.173, end: 13.006 },
    { name: 'H0, 312.6 over body', length: 0.3126, pivots: 0.2241, radius: 0.75, centre: 8.417, end: 7.875 },
    { name: '00, 258 over buffers', length: 0.258, pivots: 0.186, radius: 0.438, centre: 9.987, end: 9.03 },
  ])('$name on $radius m: $centre inside, $end outside', ({ length, pivots, radius, centre, end }) => {
    const thrown = placedThrows(length, pivots, radius);
    expect(Math.abs(thrown.centre * 1000 - centre)).toBeLessThan(0.0006);
    expect(Math.abs(thrown.end * 1000 - end)).toBeLessThan(0.0006);
  });

  it.each([
    { radius: 250, centre: 180.6, end: 167.9 },
    { radius: 150, centre: 301.1, end: 279.7 },
  ])('full size, 26.4 m on 19 m, radius $radius m', ({ radius, centre, end }) => {
    const thrown = placedThrows(26.4, 19, radius);
    expect(Math.abs(thrown.centre * 1000 - centre)).toBeLessThan(0.06);
    expect(Math.abs(thrown.end * 1000 - end)).toBeLessThan(0.06);
  });

  it('come out of the handbook forms as the handbook has them', () => {
    // Source: a²/8R and (L² - a²)/8R, full-size practice. H0 C on 500: 12.555 and 11.874 mm.
    expect(centreThrowHandbook(0.5, 0.2241) * 1000).toBeCloseTo(12.555, 3);
    expect(endThrowHandbook(0.5, 0.2241, (0.3126 - 0.2241) / 2) * 1000).toBeCloseTo(11.874, 3);
  });
});

describe('NEM 103 (2016): widening of the structure gauge in curves, H0', () => {
  // Source: NEM 103 (2016), table of widening. It is not the throw itself: the gauge's own play takes up 1 to 2.5 mm of it. So in
  // every cell that widens at all the throw must lie between the printed widening and 2.5 mm above it.
  const scale = 87;
  const cells = wideningH0Mm.flatMap((row) =>
    (['A', 'B', 'C'] as const).flatMap((group) => {
      const widening = row[group];
      return widening ? [{ group, radiusMm: row.radiusMm, widening }] : [];
    }),
  );
  it.each(cells)('group $group on $radiusMm mm: $widening mm', ({ group, radiusMm, widening }) => {
    const { body, bogieCentres } = prototypeCoach[group];
    const thrown = placedThrows(body / scale, bogieCentres / scale, radiusMm / 1000);
    const most = Math.max(thrown.centre, thrown.end) * 1000;
    expect(most).toBeGreaterThanOrEqual(widening);
    expect(most).toBeLessThanOrEqual(widening + 2.5);
  });

  it('prints model bodies that are the prototype over the scale, rounded', () => {
    for (const group of ['A', 'B', 'C'] as const) {
      expect(Math.abs(modelBodyMm.H0[group] - (prototypeCoach[group].body * 1000) / scale)).toBeLessThanOrEqual(0.5);
      expect(Math.abs(modelBodyMm.N[group] - (prototypeCoach[group].body * 1000) / 160)).toBeLessThanOrEqual(0.5);
    }
  });

  it('never widens more on a wider curve, nor less for a longer coach', () => {
    wideningH0Mm.forEach((row, i) => {
      const before = wideningH0Mm[Math.max(0, i - 1)];
      expect(row.A).toBeLessThanOrEqual(before.A);
      expect(row.B).toBeLessThanOrEqual(before.B);
      expect(row.B).toBeGreaterThanOrEqual(row.A);
      if (row.C !== null) expect(row.C).toBeGreaterThanOrEqual(row.B);
    });
  });

  it('has nothing to say below its table, nor for coaches the norm keeps off a curve', () => {
    expect(wideningH0(0.36, 'A')).toBeNull();
    expect(wideningH0(0.42, 'C')).toBeNull();
    expect(wideningH0(3, 'C')).toBe(0);
  });
});

describe('NEM 112: spacing of parallel tracks, H0, long coaches', () => {
  // Source: gotthardbahn.ch, track dimensions, quoting the norm.
  it('looks up the row of the next smaller radius', () => {
    expect(trackSpacingH0(0.4)).toBe(0.064);
    expect(trackSpacingH0(0.51)).toBe(0.059);
    expect(trackSpacingH0(0.6)).toBe(0.055);
    expect(trackSpacingH0(1)).toBe(0.047);
    expect(trackSpacingH0(1.2)).toBe(0.046);
    expect(trackSpacingH0(0.35)).toBeNull();
  });

  it('allows for the overhang that NEM 103 widens for in group C', () => {
    for (const row of curvedSpacingH0Mm) {
      const widening = wideningH0Mm.find((w) => w.radiusMm === row.radiusMm)?.C;
      if (typeof widening === 'number') expect(row.overhangMm).toBe(widening);
    }
  });
});
