import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestChainage, trackPoint } from '../../../src/core/track/index.ts';
import {
  addTrack,
  parallelTrack,
  parseScene,
  profileHeights,
  removeTrack,
  type Scene,
  setStart,
  straightTrack,
  trackLengthMm,
} from '../../../src/scene/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { sample, sampleScene, sceneOf } from '../sample.ts';

const { startMm: _start, finishMm: _finish, ...freeTrial } = sample.trials[0];

const bent = (alignment: readonly unknown[]): Scene =>
  sceneOf({
    ...sample,
    tracks: [
      {
        ...sample.tracks[0],
        start: { xMm: 500, yMm: 700, headingDeg: 30 },
        alignment,
        profile: [
          { atMm: 0, heightMm: 0 },
          { atMm: 700, gradePercent: 0, verticalCurveLengthMm: 400 },
          { at: { endOf: 'track' }, gradePercent: 2 },
        ],
        supports: { everyMm: 300 },
        stripJoints: [],
      },
    ],
    trials: [freeTrial],
  });

/** Distances, m, of places all along the new track from the old one. */
function distances(scene: Scene): { readonly away: number; readonly curved: number }[] {
  const { tracks } = compileScene(scene);
  const [old, fresh] = [...tracks.values()];
  return Array.from({ length: 201 }, (_, k) => {
    const here = trackPoint(fresh, (fresh.length * k) / 200);
    const { chainage } = nearestChainage(old, [here.x, here.y, here.z]);
    const there = trackPoint(old, chainage);
    return { away: Math.hypot(here.x - there.x, here.y - there.y), curved: there.curvature };
  });
}

describe('a track beside another', () => {
  it('has the radii larger outside and smaller inside, by the spacing', () => {
    const scene = bent([
      { kind: 'straight', lengthMm: 1500 },
      { kind: 'arc', radiusMm: 600, turn: 'left', angleDeg: 180 },
      { kind: 'straight', lengthMm: 1500 },
    ]);
    const radius = (spacing: number) => {
      const arc = parallelTrack(scene, 'line', spacing, { name: 'Beside' }).tracks[1].alignment[1];
      return arc.kind === 'arc' ? arc.radiusMm : Number.NaN;
    };
    expect([radius(50), radius(-50)]).toEqual([550, 650]);
    expect(() => radius(600)).toThrow(/has no inside at 600 mm/);
  });

  it('lies at the spacing on straights and arcs, eased curves too, whatever the numbers', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 450, max: 900 }),
        fc.integer({ min: 100, max: 400 }),
        fc.constantFrom(-60, -46, 46, 60),
        fc.integer({ min: 60, max: 200 }),
        (radiusMm, easeMm, spacing, angleDeg) => {
          const scene = bent([
            { kind: 'straight', lengthMm: 1400 },
            { kind: 'transition', lengthMm: easeMm },
            { kind: 'arc', radiusMm, turn: 'left', angleDeg },
            { kind: 'transition', lengthMm: easeMm },
            { kind: 'straight', lengthMm: 1400 },
          ]);
          const rows = distances(parallelTrack(scene, 'line', spacing, { name: 'Beside' }));
          for (const { away, curved } of rows) {
            const onArc = Math.abs(Math.abs(curved) - 1000 / radiusMm) < 1e-9;
            // Ends lie a little beside the old ends, where nearest is not square to the line.
            if (onArc) expect(Math.abs(away * 1000 - Math.abs(spacing))).toBeLessThan(1e-4);
            // In an easement the spacing is between what it is on both sides, but for a share of the shift: at most L²/24R, 15 mm here.
            expect(Math.abs(away * 1000 - Math.abs(spacing))).toBeLessThan(2.5);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  it('lies at the spacing through a compound curve and an S without straight', () => {
    const scene = bent([
      { kind: 'straight', lengthMm: 1400 },
      { kind: 'transition', lengthMm: 200 },
      { kind: 'arc', radiusMm: 900, turn: 'left', angleDeg: 60 },
      { kind: 'transition', lengthMm: 250 },
      { kind: 'arc', radiusMm: 600, turn: 'left', angleDeg: 50 },
      { kind: 'transition', lengthMm: 500 },
      { kind: 'arc', radiusMm: 700, turn: 'right', angleDeg: 70 },
      { kind: 'transition', lengthMm: 250 },
      { kind: 'straight', lengthMm: 1400 },
    ]);
    const made = parallelTrack(scene, 'line', 50, { name: 'Beside' });
    expect(parseScene(made).ok).toBe(true);
    const rows = distances(made);
    const arcs = rows.filter(({ curved }) => [900, 600, -700].some((mm) => Math.abs(curved - 1000 / mm) < 1e-9));
    expect(arcs.length).toBeGreaterThan(30);
    for (const { away } of arcs) expect(away).toBeCloseTo(0.05, 7);
    // As high opposite the points of the heights; the last is the end of both.
    const heights = made.tracks.map((track) => profileHeights(track).map(({ heightMm }) => heightMm));
    expect(heights[1]).toHaveLength(3);
    heights[1].forEach((height, index) => {
      expect(height).toBeCloseTo(heights[0][index], 6);
    });
  });

  it('begins opposite also where the track begins with an easement', () => {
    const scene = bent([
      { kind: 'transition', lengthMm: 300 },
      { kind: 'arc', radiusMm: 600, turn: 'right', angleDeg: 120 },
      { kind: 'straight', lengthMm: 2400 },
    ]);
    const arcs = distances(parallelTrack(scene, 'line', 50, { name: 'Beside' })).filter(
      ({ curved }) => Math.abs(curved + 1 / 0.6) < 1e-9,
    );
    for (const { away } of arcs) expect(away).toBeCloseTo(0.05, 7);
  });
});

describe('tracks', () => {
  it('are added under a name of their own, and taken away with what belongs to them', () => {
    const scene = sampleScene();
    const fresh = straightTrack(scene, {
      name: 'Line',
      xMm: 0,
      yMm: 90,
      headingDeg: 0,
      lengthMm: 3000,
      heightMm: 20,
      supportsEveryMm: 300,
    });
    const two = addTrack(scene, fresh);
    expect(two.tracks.map(({ id }) => id)).toEqual(['line', 'line-2']);
    expect(parseScene(two).ok).toBe(true);
    const one = removeTrack(two, 'line');
    // Its only trial goes over to what remains, from end to end.
    expect(one.trials[0]).toMatchObject({ id: 'up', track: 'line-2' });
    expect(one.trials[0].startMm).toBeUndefined();
    expect(parseScene(one).ok).toBe(true);
    expect(() => removeTrack(one, 'line-2')).toThrow(/the only track/);
    expect(() =>
      removeTrack(
        addTrack(scene, { ...fresh, alignment: [{ kind: 'straight', lengthMm: 300 }], supports: { everyMm: 100 } }),
        'line',
      ),
    ).toThrow(/no room to run/);
  });

  it('begin elsewhere when asked to, all of a piece', () => {
    const moved = setStart(sampleScene(), 'line', { xMm: 120, headingDeg: 365 });
    expect(moved.tracks[0].start).toEqual({ xMm: 120, yMm: 0, headingDeg: 5 });
    expect(trackLengthMm(moved.tracks[0])).toBe(6000);
  });
});
