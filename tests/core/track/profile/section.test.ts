import { describe, expect, it } from 'vitest';
import { makeTrack, sectionRows, straight } from '../../../../src/core/track/index.ts';
import { levelTrack } from '../arbitraryTracks.ts';

describe('sectionRows', () => {
  it('has a row at every multiple of the step and one at the end', () => {
    const track = levelTrack(straight(1.05));
    expect(sectionRows(track, 0.25).map((row) => row.chainage)).toEqual([0, 0.25, 0.5, 0.75, 1, 1.05]);
    expect(sectionRows(track, 5).map((row) => row.chainage)).toEqual([0, 1.05]);
  });

  it('does not repeat an end that the step meets but for rounding', () => {
    const rows = sectionRows(levelTrack(straight(0.3)), 0.1);
    expect(rows.map((row) => row.chainage)).toEqual([0, 0.1, 0.2, 0.3]);
    expect(sectionRows(levelTrack(straight(0.7)), 0.1)).toHaveLength(8);
  });

  it('fills every column', () => {
    const track = makeTrack({
      start: { x: 1, y: 2, heading: 0 },
      elements: [straight(2)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 1, height: 0, curve: { length: 1 } },
          { chainage: 2, height: 0.02 },
        ],
      },
    });
    expect(sectionRows(track, 1)[1]).toEqual({
      chainage: 1,
      x: 2,
      y: 2,
      z: expect.closeTo(0.0025, 15),
      heading: 0,
      curvature: 0,
      grade: expect.closeTo(0.01, 15),
      verticalCurvature: expect.closeTo(0.02, 15),
      cant: 0,
      twist: 0,
    });
  });

  it('refuses a step of nothing and a million rows', () => {
    const track = levelTrack(straight(10));
    expect(() => sectionRows(track, 0)).toThrow(/longer than 0 m/);
    expect(() => sectionRows(track, Number.NaN)).toThrow(RangeError);
    expect(() => sectionRows(track, 1e-6)).toThrow(/10000000 rows/);
  });
});
