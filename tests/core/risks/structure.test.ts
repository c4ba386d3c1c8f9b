import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assessRun,
  nearestStructure,
  portalStructures,
  riskById,
  wallStructures,
} from '../../../src/core/risks/index.ts';
import type { Structure } from '../../../src/core/risks/types.ts';
import { placeVehicle } from '../../../src/core/stock/index.ts';
import { arc, makeTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial, passing } from './samples.ts';

const risk = riskById('structure');
/** 260 mm long, 34 mm wide, from 4 to 45 mm over the rail. */
const coach = sampleVehicle({ pivotSpacing: 0.18, overhang: 0.04 });
const level = sampleTrack([straight(4)]);
const wall = { name: 'Wall', from: 1, to: 3, side: 1 as const, distance: 0.025, height: 0.1, thickness: 0.02 };

const assess = (track: Track, structures: readonly Structure[], lead = 2) =>
  assessRun(
    madeUpTrial(track, [coach], [{ lead }], { surroundings: { tracks: [track], deckDepth: 0.017, structures } }),
    [risk],
  )[0];

describe('a wall beside straight track', () => {
  it('leaves what is between it and the body: 25 - 17 = 8 mm, on either side', () => {
    for (const side of [1, -1] as const) {
      const { worst } = assess(level, wallStructures(level, { ...wall, side }));
      expect(worst?.margin).toBeCloseTo(0.008, 9);
      expect(worst?.value).toBeCloseTo(0.017, 9);
      expect(worst?.limit).toBeCloseTo(0.025, 9);
      expect(worst?.governing).toBe('wall');
    }
  });

  it('is struck where it stands nearer than half the body', () => {
    expect(assess(level, wallStructures(level, { ...wall, distance: 0.016 })).worst?.margin).toBeCloseTo(-0.001, 9);
  });

  it('leaves the underside alone where it is lower: a platform 3 mm up under a body from 4 mm', () => {
    const low = wallStructures(level, { ...wall, distance: 0.01, height: 0.003 });
    expect(assess(level, low).worst?.margin).toBeCloseTo(0.001, 9);
  });

  it('says nothing far from it', () => {
    expect(assess(level, wallStructures(level, { ...wall, distance: 0.06 })).worst).toBeNull();
    expect(assess(level, wallStructures(level, { ...wall, from: 3.5, to: 3.9 }), 1).worst).toBeNull();
  });

  it('is nearer to a body that leans towards it: 17 × cos 0.06 + 45 × sin 0.06 = 19.668 mm', () => {
    const leaning = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(4)],
      profile: { points: [{ chainage: 0, height: 0 }] },
      cant: { points: [{ chainage: 0, cant: 0.06 }], lever: 0 },
    });
    expect(assess(leaning, wallStructures(leaning, wall)).worst?.margin).toBeCloseTo(0.025 - 0.0196679, 6);
  });
});

describe('a portal', () => {
  const portal = { name: 'Portal', chainage: 2, width: 0.06, height: 0.05, depth: 0.02, thickness: 0.02, offset: 0 };

  it('leaves the lesser of side and top: 13 mm beside, 5 mm above', () => {
    const { worst } = assess(level, portalStructures(level, portal));
    expect(worst?.margin).toBeCloseTo(0.005, 9);
    expect(worst?.governing).toBe('lintel');
    expect(worst?.limit).toBeCloseTo(0.05, 9);
    expect(assess(level, portalStructures(level, { ...portal, height: 0.07 })).worst?.margin).toBeCloseTo(0.013, 9);
    const aside = portalStructures(level, { ...portal, height: 0.07, offset: 0.005 });
    expect(assess(level, aside).worst?.margin).toBeCloseTo(0.008, 9);
  });

  it('stands with its middle to the left of the track by its offset, also where the track runs north', () => {
    const north = makeTrack({ ...level.spec, start: { x: 0, y: 0, heading: Math.PI / 2 } });
    const faces = (track: Track, axis: 0 | 1) =>
      portalStructures(track, { ...portal, offset: 0.005 })[2].outline.map((corner) => corner[axis]);
    // 60 mm wide, 5 mm to the left: from 25 mm right of the track to 35 mm left of it.
    expect(Math.min(...faces(level, 1))).toBeCloseTo(-0.025, 12);
    expect(Math.max(...faces(level, 1))).toBeCloseTo(0.035, 12);
    expect(Math.min(...faces(north, 0))).toBeCloseTo(-0.035, 12);
    expect(Math.max(...faces(north, 0))).toBeCloseTo(0.025, 12);
  });

  it('on a grade stands over the rail where it is, and a pitched body keeps its height under it', () => {
    const rising = sampleTrack(
      [straight(4)],
      [
        { chainage: 0, height: 0 },
        { chainage: 4, height: 0.12 },
      ],
    );
    // 10 mm to either side of its middle the rail is 0.3 mm lower and higher, and height counts square to the rail.
    const { worst } = assess(rising, portalStructures(rising, portal));
    expect(worst?.margin).toBeCloseTo(0.05 * Math.cos(Math.atan(0.03)) - 0.01 * Math.sin(Math.atan(0.03)) - 0.045, 9);
  });

  it('is named', () => {
    const both = [...portalStructures(level, portal), ...wallStructures(level, wall)];
    expect(nearestStructure(both, coach, placeVehicle(level, coach, 2))?.name).toBe('Portal');
    expect(nearestStructure(both, coach, placeVehicle(level, coach, 1.5))?.name).toBe('Wall');
  });
});

describe('margins to structures', () => {
  it('are those of the mirror image, anchored at 8 mm above', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.4, max: 1, noNaN: true }),
        fc.double({ min: 0.02, max: 0.04, noNaN: true }),
        (radius, distance) => {
          const margins = (hand: 1 | -1) => {
            const track = sampleTrack([straight(1), arc(radius, hand * 1.5), straight(0.5)]);
            const around = wallStructures(track, { ...wall, distance, side: hand, from: 0.9, to: 2 });
            const context = madeUpTrial(track, [coach], passing(0.6, 2.2, 0.1), {
              surroundings: { tracks: [track], deckDepth: 0.017, structures: around },
            });
            return [...assessRun(context, [risk])[0].margins];
          };
          const mirrored = margins(-1);
          margins(1).forEach((margin, i) => {
            if (Number.isNaN(margin)) expect(mirrored[i]).toBeNaN();
            else expect(Math.abs(mirrored[i] - margin)).toBeLessThan(1e-9);
          });
        },
      ),
      { numRuns: 20 },
    );
  });
});
