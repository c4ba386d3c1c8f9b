import { describe, expect, it } from 'vitest';
import { changedPath, routePath } from '../../../src/core/dynamics/index.ts';
import { arc, makeTrack, plannedHeight, reverseTrack, straight, trackPoint } from '../../../src/core/track/index.ts';

const first = makeTrack({
  start: { x: 0, y: 0, heading: 0 },
  elements: [straight(1), straight(1)],
  profile: {
    points: [{ chainage: 0, height: 0.05 }],
    strip: {
      supports: [0, 0.5, 1, 1.5, 2].map((chainage) => ({ chainage, departure: chainage === 1 ? 0.002 : 0 })),
      hinges: [],
    },
  },
});
const second = makeTrack({
  start: { x: 3, y: 0, heading: Math.PI },
  elements: [straight(1)],
  profile: { points: [{ chainage: 0, height: 0.05 }] },
});

describe('the path of a route', () => {
  const { path, misfits } = routePath([
    { track: first, from: 0.25, to: 2 },
    { track: second, from: 1, to: 0 },
  ]);

  it('knows where its legs start, and runs the second backwards', () => {
    expect(misfits).toEqual([]);
    expect(path.legs?.map(({ start }) => start)).toEqual([0, 1.75]);
    expect(path.reversed).toBe(false);
    expect(trackPoint(path.track, 2.75).x).toBeCloseTo(3, 12);
  });

  it('keeps the planned heights beside those as built', () => {
    // 1 m along the first track, where the support is 2 mm high.
    expect(trackPoint(path.track, 0.75).z).toBeCloseTo(0.052, 12);
    expect(plannedHeight(path.track, 0.75)).toBeCloseTo(0.05, 12);
  });

  it('follows a track that is built otherwise', () => {
    const level = makeTrack({ ...first.spec, profile: { points: first.spec.profile.points } });
    const changed = changedPath(path, first, level);
    expect(trackPoint(changed!.track, 0.75).z).toBeCloseTo(0.05, 12);
    expect(changed?.legs?.[0].track).toBe(level);
  });

  it('ends where a track is led away from the next, and goes on to the end of the last', () => {
    const bent = makeTrack({ ...first.spec, elements: [straight(1), arc(2, 0.5)] });
    expect(changedPath(path, first, bent)).toBeNull();
    const ahead = routePath([{ track: first, from: 0, to: 2 }]).path;
    const longer = makeTrack({ ...first.spec, elements: [straight(1), arc(2, 0.55)] });
    expect(changedPath(ahead, first, longer)?.track.length).toBeCloseTo(2.1, 12);
  });
});

describe('the path over one track', () => {
  it('is the changed one, the same way round', () => {
    const level = makeTrack({ ...first.spec, profile: { points: first.spec.profile.points } });
    const back = changedPath({ track: reverseTrack(first), reversed: true }, first, level);
    expect(trackPoint(back!.track, 1).z).toBeCloseTo(0.05, 12);
    expect(trackPoint(back!.track, 0).x).toBeCloseTo(2, 12);
  });
});
