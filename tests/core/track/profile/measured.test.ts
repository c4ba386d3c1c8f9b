import { describe, expect, it } from 'vitest';
import {
  gradeBreaks,
  type MeasuredSpec,
  makeTrack,
  plannedHeight,
  reverseTrack,
  straight,
  type Track,
  TrackError,
  trackPoint,
} from '../../../../src/core/track/index.ts';

const heights = [0, 0.011, 0.019, 0.032].map((height, i) => ({ chainage: 0.2 + 0.5 * i, height }));

const measured = (change: Partial<MeasuredSpec> = {}): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(2)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 2, height: 0.04 },
      ],
      measured: { heights, between: 'beam', hinges: [], ...change },
    },
  });

describe('a measured profile', () => {
  it('passes through its heights, straight or bent, and leaves the plan alone', () => {
    for (const between of ['beam', 'straight'] as const) {
      const track = measured({ between });
      for (const { chainage, height } of heights) expect(trackPoint(track, chainage).z).toBeCloseTo(height, 14);
      expect(plannedHeight(track, 1)).toBeCloseTo(0.02, 15);
    }
  });

  it('straight, has the grade of its neighbours between them and breaks at each', () => {
    const track = measured({ between: 'straight' });
    expect(trackPoint(track, 0.5).grade).toBeCloseTo(0.022, 14);
    expect(trackPoint(track, 0.1).grade).toBeCloseTo(0.022, 14);
    expect(trackPoint(track, 1.9).grade).toBeCloseTo(0.026, 14);
    expect(gradeBreaks(track)).toEqual([
      { chainage: 0.7, before: expect.closeTo(0.022, 13), after: expect.closeTo(0.016, 13) },
      { chainage: 1.2, before: expect.closeTo(0.016, 13), after: expect.closeTo(0.026, 13) },
    ]);
  });

  it('bent, has the moments of the three-moment equation and no break', () => {
    // Equal spans h: 4·M1 + M2 = 6Δ1/h², M1 + 4·M2 = 6Δ2/h², Δ the second differences -0.003 and 0.005: y″ = -0.0272 and 0.0368 times 1/0.5².
    const [first, second] = [-0.003, 0.005];
    const m1 = (6 * (4 * first - second)) / 15 / 0.25;
    const m2 = (6 * (4 * second - first)) / 15 / 0.25;
    const track = measured();
    expect(trackPoint(track, 0.7).verticalCurvature).toBeCloseTo(m1, 12);
    expect(trackPoint(track, 1.2).verticalCurvature).toBeCloseTo(m2, 12);
    expect(gradeBreaks(track)).toEqual([]);
    expect(gradeBreaks(measured({ hinges: [0.7] })).map((place) => place.chainage)).toEqual([0.7]);
  });

  it('is the same the other way', () => {
    const track = measured({ hinges: [1.2] });
    const back = reverseTrack(track);
    for (const s of [0, 0.3, 0.9, 1.5, 2]) expect(trackPoint(back, 2 - s).z).toBeCloseTo(trackPoint(track, s).z, 14);
  });

  it('is refused with one height, or heights that do not rise in chainage', () => {
    expect(() => measured({ heights: heights.slice(0, 1) })).toThrow(/at least two heights, and has 1/);
    expect(() => measured({ heights: [...heights].reverse() })).toThrow(TrackError);
    expect(() => measured({ heights: [{ chainage: 0, height: Number.NaN }, ...heights] })).toThrow(/finite/);
  });
});
