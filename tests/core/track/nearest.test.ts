import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../src/core/math/index.ts';
import {
  arc,
  helix,
  makeTrack,
  nearestChainage,
  straight,
  type Track,
  trackPoint,
} from '../../../src/core/track/index.ts';
import { evenly } from '../../evenly.ts';
import { anyTrack, levelTrack } from './arbitraryTracks.ts';

const coordinate = evenly(-3, 3);

function at(track: Track, s: number): Vec3 {
  const { x, y, z } = trackPoint(track, s);
  return [x, y, z];
}

/** The least of many samples, each bettered by golden-section search between its neighbours. */
function byBruteForce(track: Track, target: Vec3): number {
  const n = Math.ceil(track.length / 0.002);
  const far = (s: number): number => distance(at(track, Math.min(Math.max(s, 0), track.length)), target);
  const samples = Array.from({ length: n + 1 }, (_, i) => far((i / n) * track.length));
  const floor = Math.min(...samples) + track.length / n;
  let best = Number.POSITIVE_INFINITY;
  samples.forEach((sample, i) => {
    if (sample > floor) return;
    let [low, high] = [((i - 1) / n) * track.length, ((i + 1) / n) * track.length];
    for (let step = 0; step < 45; step++) {
      const [p, q] = [high - 0.618034 * (high - low), low + 0.618034 * (high - low)];
      if (far(p) < far(q)) high = q;
      else low = p;
    }
    best = Math.min(best, far((low + high) / 2), sample);
  });
  return best;
}

const spiral = makeTrack({
  start: { x: 0, y: 0, heading: 0 },
  elements: [helix(0.6, 4)],
  profile: {
    points: [
      { chainage: 0, height: 0 },
      { chainage: 2 * Math.PI * 0.6, height: 0.09 },
    ],
  },
});

describe('nearestChainage', () => {
  it('projects on a straight and stops at its ends', () => {
    const track = levelTrack(straight(2));
    expect(nearestChainage(track, [0.7, 0.3, 0.4])).toEqual({
      chainage: expect.closeTo(0.7, 12),
      distance: expect.closeTo(0.5, 14),
    });
    expect(nearestChainage(track, [-3, 4, 0])).toEqual({ chainage: 0, distance: 5 });
    expect(nearestChainage(track, [5, 0, 4])).toEqual({ chainage: 2, distance: 5 });
  });

  it('tells the turns of a helix apart by height', () => {
    const turn = 2 * Math.PI * 0.6;
    for (const n of [0, 1, 2, 3]) {
      const there = trackPoint(spiral, (n + 0.3) * turn);
      expect(nearestChainage(spiral, [there.x, there.y, there.z + 0.03]).chainage).toBeCloseTo((n + 0.3) * turn, 2);
      // Past half the pitch of 90 mm the next turn is nearer.
      const above = nearestChainage(spiral, [there.x, there.y, there.z + 0.05]).chainage;
      expect(above).toBeCloseTo((Math.min(n + 1, 3) + 0.3) * turn, n < 3 ? 2 : 1);
    }
  });

  it('answers from the axis of a helix, where only height decides, and from the centre of a level circle', () => {
    const onAxis = nearestChainage(spiral, [0, 0.6, 0.2]);
    expect(onAxis.distance).toBeCloseTo(0.6, 12);
    expect(trackPoint(spiral, onAxis.chainage).z).toBeCloseTo(0.2, 6);
    const circle = levelTrack(helix(0.6, 20));
    expect(nearestChainage(circle, [0, 0.6, 0]).distance).toBeCloseTo(0.6, 10);
    expect(nearestChainage(circle, [1e-7, 0.6, 0]).distance).toBeCloseTo(0.6 - 1e-7, 10);
  });

  it('finds the near side of a break of grade', () => {
    // A roof of 20 % either side of 1 m: from above its ridge the ridge is nearest, from 0.3 m below it a slope.
    const roof = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(2)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 1, height: 0.2 },
          { chainage: 2, height: 0 },
        ],
      },
    });
    expect(nearestChainage(roof, [1, 0, 0.3])).toEqual({
      chainage: expect.closeTo(1, 11),
      distance: expect.closeTo(0.1, 13),
    });
    const below = nearestChainage(roof, [1, 0, -0.1]);
    // Distance from a point 0.3 below the ridge to a line of slope 0.2: 0.3/√1.04.
    expect(below.distance).toBeCloseTo(0.3 / Math.sqrt(1.04), 13);
  });

  it('gives back the chainage of a place on the track, to 1e-9 m', () => {
    fc.assert(
      fc.property(anyTrack, evenly(0, 1), (track, fraction) => {
        const place = at(track, fraction * track.length);
        const found = nearestChainage(track, place);
        expect(found.distance).toBeLessThan(1e-9);
        // The track may cross itself, so it is the place that must agree.
        expect(distance(at(track, found.chainage), place)).toBeLessThan(1e-9);
      }),
    );
    const track = levelTrack(straight(0.4), arc(0.5, 2));
    for (const s of [0.1, 0.4, 0.9, 1.37])
      expect(Math.abs(nearestChainage(track, at(track, s)).chainage - s)).toBeLessThan(1e-9);
  });

  it('is never farther than the best of a brute-force search', () => {
    fc.assert(
      fc.property(anyTrack, fc.tuple(coordinate, coordinate, coordinate), (track, target) => {
        fc.pre(track.length < 20);
        const found = nearestChainage(track, target);
        expect(distance(at(track, found.chainage), target)).toBeCloseTo(found.distance, 13);
        expect(Math.abs(found.distance - byBruteForce(track, target))).toBeLessThan(1e-9);
      }),
      { numRuns: 60 },
    );
  });
});
