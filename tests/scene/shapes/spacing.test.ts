import { describe, expect, it } from 'vitest';
import { type ShapeScale, shapeScaleOf, shapeScales, spacingFor } from '../../../src/scene/index.ts';

const scaleNamed = (name: string): ShapeScale => shapeScaleOf({ name, gaugeMm: 0 });
const straight = Number.POSITIVE_INFINITY;

describe('spacing of parallel tracks', () => {
  // Source: NEM 112 in a club's print (H0) and on an N-gauge planning page.
  it.each([
    ['HO', 'line', 46],
    ['HO', 'station', 52],
    ['N', 'line', 25],
    ['N', 'station', 28],
  ] as const)('of straight track in %s, %s: %i mm', (name, use, mm) => {
    expect(spacingFor(scaleNamed(name), use, straight)).toMatchObject({ mm, because: { source: /NEM 112/ } });
  });

  // Source: the same print.
  it.each([
    [400, 64],
    [499, 61],
    [500, 59],
    [600, 55],
    [1000, 47],
    [1200, 46],
  ])('of curves of %i mm in H0: %i mm', (radiusMm, mm) => {
    expect(spacingFor(scaleNamed('HO'), 'line', radiusMm).mm).toBe(mm);
  });

  it('is 1/76.2 to 1/87 wider in 00 than in H0 on the same gauge', () => {
    // 46 mm times 87/76.2 are 52.5 mm.
    expect(spacingFor(scaleNamed('OO'), 'line', straight)).toMatchObject({ mm: 53, because: { source: /times 1.14/ } });
  });

  it('takes two structure gauges of NEM 102 where no row of NEM 112 is to hand', () => {
    // BL1 of TT is 36 mm, of 0 it is 94 mm. Source: NEM 102 (2017).
    expect(spacingFor(scaleNamed('TT'), 'line', straight)).toMatchObject({ mm: 36, because: { source: /NEM 102/ } });
    expect(spacingFor(scaleNamed('O'), 'line', straight).mm).toBe(94);
  });

  it('widens a curve without a row by the overhang rule of the page that quotes the norm', () => {
    // That page: 240 mm to each side at 150 m. In N a curve of 937.5 mm is 150 m full size; 240 mm are 1.5 mm: 25 + 3.
    expect(spacingFor(scaleNamed('N'), 'line', 937.5).mm).toBe(28);
    // Below the last row of H0, 400 mm, it is wider than that row.
    expect(spacingFor(scaleNamed('HO'), 'line', 360).mm).toBeGreaterThan(64);
  });

  it('never falls short of the straight spacing, nor grows with the radius', () => {
    for (const scale of shapeScales) {
      const widths = [300, 450, 620, 900, 1500, 4000, straight].map(
        (radiusMm) => spacingFor(scale, 'line', radiusMm).mm,
      );
      expect(widths).toEqual(widths.toSorted((a, b) => b - a));
    }
  });
});

describe('the scale of a railway', () => {
  it('is known by its name, else by its gauge', () => {
    expect(shapeScaleOf({ name: 'OO', gaugeMm: 16.5 }).ratio).toBe(76.2);
    expect(shapeScaleOf({ name: 'our own', gaugeMm: 16.2 }).gaugeMm).toBe(16.5);
    expect(shapeScaleOf({ name: '', gaugeMm: 130 }).gaugeMm).toBe(45);
  });
});
