import { describe, expect, it } from 'vitest';
import {
  addProfilePoint,
  moveSupport,
  parseScene,
  profileHeights,
  removeProfilePoint,
  type Scene,
  setProfilePoint,
  setSupportsEvery,
} from '../../../src/scene/index.ts';
import { sample, sampleScene, sceneOf } from '../sample.ts';

const line = (scene: Scene) => scene.tracks[0];
const heights = (scene: Scene) => profileHeights(line(scene)).map(({ heightMm }) => Math.round(heightMm * 1e6) / 1e6);

const graded = (): Scene =>
  sceneOf({
    ...sample,
    tracks: [
      {
        ...sample.tracks[0],
        profile: [
          { atMm: 0, heightMm: 10 },
          { atMm: 2000, gradePercent: 0, verticalCurveLengthMm: 400 },
          { at: { endOf: 'second' }, gradePercent: 2 },
          { at: { endOf: 'track' }, gradePercent: 1 },
        ],
      },
    ],
  });

describe('a point of the heights', () => {
  it('takes those after it along that are given by grade', () => {
    expect(heights(graded())).toEqual([10, 10, 50, 70]);
    expect(heights(setProfilePoint(graded(), 'line', 1, { heightMm: 25 }))).toEqual([10, 25, 65, 85]);
    expect(heights(setProfilePoint(graded(), 'line', 2, { gradePercent: 3 }))).toEqual([10, 10, 70, 90]);
  });

  it('stays relative when it is moved', () => {
    const moved = setProfilePoint(graded(), 'line', 2, { atMm: 4250 });
    expect(line(moved).profile[2]).toEqual({ at: { endOf: 'second', plusMm: 250 }, gradePercent: 2 });
    expect(line(setProfilePoint(moved, 'line', 2, { atMm: 4000 })).profile[2]).toEqual(line(graded()).profile[2]);
  });

  it('has one vertical curve, by length or by radius, or none', () => {
    const by = (change: Parameters<typeof setProfilePoint>[3]) =>
      line(setProfilePoint(graded(), 'line', 1, change)).profile[1];
    expect(by({ verticalCurveRadiusMm: 9000 })).toEqual({ atMm: 2000, gradePercent: 0, verticalCurveRadiusMm: 9000 });
    expect(by({ verticalCurveLengthMm: 600 })).toEqual({ atMm: 2000, gradePercent: 0, verticalCurveLengthMm: 600 });
    expect(by({ verticalCurveLengthMm: null })).toEqual({ atMm: 2000, gradePercent: 0 });
  });

  it('refuses in words what cannot be', () => {
    const set = (change: Parameters<typeof setProfilePoint>[3]) => () => setProfilePoint(graded(), 'line', 1, change);
    expect(set({ atMm: 4100 })).toThrow(/Line: that gives chainage 4000 mm after 4100 mm/);
    expect(set({ verticalCurveLengthMm: 9000 })).toThrow(/vertical curves that need 4500 mm/);
    expect(set({ heightMm: 1, gradePercent: 1 })).toThrow(/a height or a grade, not both/);
  });

  it('is put in without changing anything, and taken out without moving the others', () => {
    const more = addProfilePoint(graded(), 'line', 3000);
    expect(heights(more)).toEqual([10, 10, 30, 50, 70]);
    expect(heights(removeProfilePoint(more, 'line', 2))).toEqual([10, 10, 50, 70]);
    expect(heights(removeProfilePoint(graded(), 'line', 1))).toEqual([10, 50, 70]);
    expect(heights(removeProfilePoint(graded(), 'line', 0))).toEqual([10, 50, 70]);
    expect(() => addProfilePoint(graded(), 'line', 2000.4)).toThrow(/a point of the heights at 2000 mm already/);
    expect(() => addProfilePoint(graded(), 'line', 6200)).toThrow(/not on Line, which is 6000 mm long/);
    expect(parseScene(more).ok).toBe(true);
  });
});

describe('supports', () => {
  it('are raised and lowered one by one', () => {
    const up = moveSupport(sampleScene(), 'line', 4, -2);
    expect(line(up).supports).toEqual({
      everyMm: 300,
      off: [
        { support: 3, byMm: 1.5 },
        { support: 5, byMm: -2 },
      ],
    });
    expect(line(moveSupport(up, 'line', 2, 0)).supports).toEqual({ everyMm: 300, off: [{ support: 5, byMm: -2 }] });
    expect(() => moveSupport(sampleScene(), 'line', 21, 1)).toThrow(/21 supports; there is no number 22/);
  });

  it('spread at another distance hand their departures to the nearest', () => {
    // Support 3 of 300 mm stands at 600 mm: number 4 of a row of 200 mm.
    expect(line(setSupportsEvery(sampleScene(), 'line', 200)).supports).toEqual({
      everyMm: 200,
      off: [{ support: 4, byMm: 1.5 }],
    });
    expect(line(setSupportsEvery(sampleScene(), 'line', 250, 100)).supports).toEqual({
      everyMm: 250,
      firstMm: 100,
      off: [{ support: 3, byMm: 1.5 }],
    });
    expect(() => setSupportsEvery(sampleScene(), 'line', 6001)).toThrow(/fewer than two/);
  });
});
