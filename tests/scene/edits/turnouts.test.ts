import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import {
  cornerPlace,
  extendTrack,
  layTurnout,
  moveCorner,
  moveTurnout,
  type Scene,
  turnoutNear,
  turnoutTowards,
} from '../../../src/scene/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { sample, sceneOf } from '../sample.ts';

/** A straight, level main track 4 m long due east from (0.2, 0.1), with a turnout to the left at 1 m. */
function branched(): Scene {
  const { startMm: _start, finishMm: _finish, ...freeTrial } = sample.trials[0];
  const main = sceneOf({
    ...sample,
    tracks: [
      {
        ...sample.tracks[0],
        start: { xMm: 200, yMm: 100, headingDeg: 0 },
        alignment: [{ kind: 'straight', lengthMm: 4000 }],
        profile: [{ atMm: 0, heightMm: 30 }],
        stripJoints: [],
      },
    ],
    trials: [freeTrial],
  });
  return layTurnout(main, 'line', { name: 'Spur', atMm: 1000, hand: 'left', towards: 'end' });
}

const spur = (scene: Scene) => {
  const track = compileScene(scene).tracks.get('spur');
  if (track === undefined) throw new Error('no spur');
  for (const { position, heading } of track.jumps) {
    expect(Math.abs(position) + Math.abs(heading)).toBeLessThan(1e-12);
  }
  return track;
};
const ends = (scene: Scene) => {
  const track = spur(scene);
  return { from: trackPoint(track, 0), to: trackPoint(track, track.length), track };
};

describe('a branch laid by hand', () => {
  it('leaves tangent to its main track and runs on at the angle of a crossing of 1 in 6, as high as the main', () => {
    const { from, to } = ends(branched());
    expect(from.x).toBeCloseTo(1.2, 12);
    expect(from.y).toBeCloseTo(0.1, 12);
    expect(from.heading).toBeCloseTo(0, 12);
    // Square to one leg a crossing of 1 in N has tan α = 1/N.
    expect(Math.tan(to.heading)).toBeCloseTo(1 / 6, 9);
    expect(to.z).toBeCloseTo(0.03, 12);
  });

  it('slides along its main track as one piece', () => {
    const before = ends(branched());
    const after = ends(moveTurnout(branched(), 'spur', { atMm: 1400 }));
    expect(after.from.x - before.from.x).toBeCloseTo(0.4, 12);
    expect(after.to.x - before.to.x).toBeCloseTo(0.4, 12);
    expect(after.to.y).toBeCloseTo(before.to.y, 12);
    expect(() => moveTurnout(branched(), 'spur', { atMm: 3950 })).toThrow(/reaches .* beyond the track/);
  });

  it('lies as in a mirror on the main track with the other hand, and the other way round towards the start', () => {
    const bent = extendTrack(branched(), 'spur', { xMm: 2600, yMm: 500 }, { radiusMm: 600, easeMm: 0 });
    const before = ends(bent);
    const right = ends(moveTurnout(bent, 'spur', { hand: 'right' }));
    expect(right.to.x).toBeCloseTo(before.to.x, 9);
    expect(right.to.y - 0.1).toBeCloseTo(0.1 - before.to.y, 9);
    const back = ends(moveTurnout(bent, 'spur', { towards: 'start' }));
    expect(back.to.x - 1.2).toBeCloseTo(1.2 - before.to.x, 9);
    expect(back.to.y - 0.1).toBeCloseTo(0.1 - before.to.y, 9);
  });

  it('goes on from its end to a place, and keeps its other corners where they were when one is moved', () => {
    const wanted = { xMm: 2600, yMm: 500 };
    const scene = extendTrack(branched(), 'spur', wanted, { radiusMm: 600, easeMm: 0 });
    const { to } = ends(scene);
    expect(to.x).toBeCloseTo(2.6, 9);
    expect(to.y).toBeCloseTo(0.5, 9);
    const file = scene.tracks[1];
    const arc = file.alignment.findIndex(({ kind }) => kind === 'arc');
    const corner = cornerPlace(scene, file, arc) ?? { xMm: Number.NaN, yMm: Number.NaN };
    const heel = trackPoint(spur(scene), 0.25);
    // The corner lies on the line that the turnout leads off in.
    expect(Math.atan2(corner.yMm / 1000 - heel.y, corner.xMm / 1000 - heel.x)).toBeCloseTo(heel.heading, 9);
    const moved = moveCorner(scene, 'spur', arc, { xMm: corner.xMm + 100, yMm: corner.yMm + 40 });
    expect(trackPoint(spur(moved), 0.25)).toEqual(heel);
    expect(ends(moved).to.x).toBeCloseTo(2.6, 9);
    expect(ends(moved).to.y).toBeCloseTo(0.5, 9);
  });

  it('comes to the place of its main track nearest to a hand, and to the side the hand is on', () => {
    const near = turnoutNear(branched(), 'spur', { xMm: 1733, yMm: 142 });
    expect(near.atMm).toBeCloseTo(1533, 6);
    expect(near.offMm).toBeCloseTo(42, 6);
    expect(turnoutTowards(branched(), 'spur', { xMm: 1500, yMm: 60 })).toEqual({ hand: 'right', towards: 'end' });
    // Towards the start a train runs west: south of the track is to its left.
    expect(turnoutTowards(branched(), 'spur', { xMm: 900, yMm: 60 })).toEqual({ hand: 'left', towards: 'start' });
  });
});
