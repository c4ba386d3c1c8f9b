import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nestedPitch, ringSector } from '../../../src/core/build/index.ts';

/** Points along both edges and both ends of a sector, its middle upwards, dense. */
function outline(inner: number, outer: number, angle: number): [number, number][] {
  const points: [number, number][] = [];
  for (let i = 0; i <= 400; i++) {
    const a = (i / 400 - 0.5) * angle;
    const r = inner + ((outer - inner) * i) / 400;
    points.push([inner * Math.sin(a), inner * Math.cos(a)], [outer * Math.sin(a), outer * Math.cos(a)]);
    for (const end of [-angle / 2, angle / 2]) points.push([r * Math.sin(end), r * Math.cos(end)]);
  }
  return points;
}

const anySector = fc.record({
  radius: fc.double({ min: 0.2, max: 2, noNaN: true }),
  share: fc.double({ min: 0.02, max: 0.9, noNaN: true }),
  angle: fc.double({ min: 0.05, max: 2.4, noNaN: true }),
});

describe('a sector of a ring', () => {
  it('has the ends of sixteen and of twelve boards to a ring cut off square as carpenters cut them', () => {
    // Common practice, no source: 180° over the number of boards, 11 1/4° and 15°.
    for (const [boards, degrees] of [
      [16, 11.25],
      [12, 15],
    ]) {
      const { mitre } = ringSector(0.762, 0.127, (2 * Math.PI) / boards);
      expect((mitre * 180) / Math.PI).toBeCloseTo(degrees, 12);
    }
  });

  it('is a quarter ring by hand', () => {
    // Radii 3 and 5 (width 2 about 4): chords 3√2 and 5√2; the blank is 5√2 by 5 - 3/√2.
    const quarter = ringSector(4, 2, Math.PI / 2);
    expect(quarter.innerChord).toBeCloseTo(3 * Math.SQRT2, 12);
    expect(quarter.outerChord).toBeCloseTo(5 * Math.SQRT2, 12);
    expect(quarter.blank.length).toBeCloseTo(5 * Math.SQRT2, 12);
    expect(quarter.blank.width).toBeCloseTo(5 - 3 / Math.SQRT2, 12);
  });

  it('just fits into its blank, and into the board with straight sides', () => {
    fc.assert(
      fc.property(anySector, ({ radius, share, angle }) => {
        const sector = ringSector(radius, share * radius, angle);
        const points = outline(sector.inner, sector.outer, angle);
        const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
        // An edge seen at 400 places departs from its chord by up to R(angle/400)²/8, 1e-5 m here.
        expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(sector.blank.length, 4);
        expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(sector.blank.width, 4);
        // Straight sides: between two lines across, and between the radial ends.
        const across = Math.max(...ys) - Math.min(...ys);
        expect(across).toBeLessThanOrEqual(sector.blank.width + 1e-9);
        const side = sector.straightSided.innerSide + 2 * sector.blank.width * Math.tan(angle / 2);
        expect(side).toBeCloseTo(sector.straightSided.outerSide, 9);
      }),
    );
  });

  it('refuses what is no board', () => {
    expect(() => ringSector(0.03, 0.07, 1)).toThrow(RangeError);
    expect(() => ringSector(0.6, 0.07, 3.2)).toThrow(RangeError);
  });
});

describe('sectors nested on a board', () => {
  it('touch nowhere, keep the kerf, and would not at a hair less', () => {
    fc.assert(
      fc.property(anySector, fc.double({ min: 0, max: 0.004, noNaN: true }), ({ radius, share, angle }, kerf) => {
        const sector = ringSector(radius, share * radius, angle);
        const pitch = nestedPitch(sector, kerf);
        /** Least distance from the outline of the one above to the piece below it, whose axis lies `by` lower: negative inside. */
        const gap = (by: number): number =>
          Math.min(
            ...outline(sector.inner, sector.outer, angle).map(([x, y]) => {
              const [r, a] = [Math.hypot(x, y + by), Math.atan2(x, y + by)];
              if (Math.abs(a) <= angle / 2)
                return r > (sector.inner + sector.outer) / 2 ? r - sector.outer : sector.inner - r;
              return Number.POSITIVE_INFINITY;
            }),
          );
        expect(gap(pitch)).toBeGreaterThan(kerf - 1e-9);
        expect(gap(pitch - 1e-3)).toBeLessThan(kerf);
      }),
    );
  });
});
