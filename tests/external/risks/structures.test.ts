import { describe, expect, it } from 'vitest';
import { assessRun, portalStructures, riskById, wallStructures } from '../../../src/core/risks/index.ts';
import type { Structure } from '../../../src/core/risks/types.ts';
import { clearHeight, structureGaugeMm, tunnelWidth, type Vehicle, wideningH0 } from '../../../src/core/stock/index.ts';
import { arc, type Track } from '../../../src/core/track/index.ts';
import { madeUpTrial } from '../../core/risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

const worst = (track: Track, vehicle: Vehicle, structures: readonly Structure[]) =>
  assessRun(
    madeUpTrial(track, [vehicle], [{ lead: 1 }], { surroundings: { tracks: [track], deckDepth: 0.017, structures } }),
    [risk],
  )[0].worst;
const risk = riskById('structure');

/** Longest coach of NEM 103's group C in H0: body 27.2 m and bogie centres 19.5 m at 1:87; 34 mm wide is common practice, no source. */
const longest = sampleVehicle({ pivotSpacing: 0.2241, overhang: 0.04425 });

describe('a wall at the edge of the structure gauge with the widening of a curve', () => {
  // Source: NEM 102 (2017), BL1 = 48 mm; NEM 103 (2016), widening E of group C: 12 mm on 450, 11 on 500, 9 on 600, 4 on 1000 mm. The norm's E is
  // less than the throw of the longest coach by up to 2.5 mm, which the gauge's own play takes up, and is never more than it.
  it.each([450, 500, 600, 1000])('on %i mm has what straight track has, less up to 2.5 mm', (radiusMm) => {
    const radius = radiusMm / 1000;
    const track = sampleTrack([arc(radius, 4)]);
    const widening = wideningH0(radius, 'C') ?? Number.NaN;
    const wall = wallStructures(track, {
      name: 'Wall',
      from: 0.6,
      to: 1.4,
      side: 1,
      distance: structureGaugeMm.H0.bl1 / 2000 + widening,
      height: 0.06,
      thickness: 0.01,
    });
    const onStraight = structureGaugeMm.H0.bl1 / 2000 - 0.017;
    const left = worst(track, longest, wall)?.margin ?? Number.NaN;
    expect(left).toBeLessThan(onStraight);
    expect(left).toBeGreaterThan(onStraight - 0.0025);
  });
});

describe('a tunnel mouth', () => {
  // Source: NEM 105 (2013): BL1 + 0.3 G on either side, and E on either side in a curve: 48 + 2 × 4.95 = 57.9 mm straight, 79.9 mm on 500 mm for group C.
  it('is as wide as the norm has it', () => {
    expect(tunnelWidth('H0')).toBeCloseTo(0.0579, 12);
    expect(tunnelWidth('H0', 0.011)).toBeCloseTo(0.0799, 12);
  });

  it('lets the longest coach through on 500 mm, under the clear height of NEM 102', () => {
    const track = sampleTrack([arc(0.5, 4)]);
    const widening = wideningH0(0.5, 'C') ?? Number.NaN;
    const mouth = (width: number) =>
      portalStructures(track, {
        name: 'Mouth',
        chainage: 1,
        width,
        height: clearHeight('H0', false),
        depth: 0.02,
        thickness: 0.02,
        offset: 0,
      });
    // 39.95 - 17 - 12.717 = 10.2 mm on the inside; the mouth is 20 mm deep and square, which takes 0.1 mm on this curve.
    expect(worst(track, longest, mouth(tunnelWidth('H0', widening)))?.margin).toBeGreaterThan(0.01);
    expect(worst(track, longest, mouth(tunnelWidth('H0', widening)))?.margin).toBeLessThan(0.0103);
    // As wide as on the straight it is struck: 28.95 - 29.7 mm.
    expect(worst(track, longest, mouth(tunnelWidth('H0')))?.margin).toBeLessThan(0);
  });
});
