import { describe, expect, it } from 'vitest';
import { judgeProfile } from '../../../../src/core/study/profile/index.ts';
import { arc, straight } from '../../../../src/core/track/index.ts';
import type { GradePoint } from '../../../../src/core/track/types.ts';
import { taskOn, trackOn } from './samples.ts';

/** 3 % down for a metre, 1 % up for two, then level: over 0.6 m a radius of 0.6/0.04 = 15 m, over 0.4 m one of 40 m. */
const points: GradePoint[] = [
  { chainage: 0, height: 0.05 },
  { chainage: 1, height: 0.02, curve: { length: 0.6 } },
  { chainage: 3, height: 0.04, curve: { length: 0.4 } },
  { chainage: 4, height: 0.04 },
];
const plan = trackOn([straight(4)]);

describe('a profile judged on the track', () => {
  it('comes to the steepest grade either way and the tightest radius that its points say', () => {
    const found = judgeProfile(taskOn(plan), points);
    expect(found.steepest).toBeCloseTo(0.03, 12);
    expect(found.verticalRadius).toBeCloseTo(15, 9);
    // Steepest from the very start on; bent most about the first point.
    expect(found.at.steepest).toBe(0);
    expect(found.at.verticalRadius).toBeCloseTo(1, 9);
    expect(found.heightMissed).toBe(0);
    expect(found.clearanceSpare).toBe(Number.POSITIVE_INFINITY);
  });

  it('counts for the ruling grade only the ways that are climbed, and the curve with what climbs it', () => {
    const ruling = (towards: 'end' | 'start' | 'both') => judgeProfile(taskOn(plan, { towards }), points).ruling;
    expect(ruling('end')).toBeCloseTo(0.01, 9);
    expect(ruling('start')).toBeCloseTo(0.03, 9);
    expect(ruling('both')).toBeCloseTo(0.03, 9);
    // On an arc of 0.5 m worth 10 mm of length over the radius: 2 % more.
    const round = trackOn([arc(0.5, 8)]);
    expect(judgeProfile(taskOn(round, { curveLength: 0.01 }), points).ruling).toBeCloseTo(0.03, 9);
  });

  it('misses heights by what a vertical curve leaves of its corner, an eighth of length times change of grade', () => {
    const heights = [
      { chainage: 0, height: 0.051 },
      { chainage: 1, height: 0.02 },
      { chainage: 2, height: 0.028 },
    ];
    const found = judgeProfile(taskOn(plan, { heights }), points);
    expect(found.heightMissed).toBeCloseTo((0.6 * 0.04) / 8, 12);
    expect(found.at.heightMissed).toBe(1);
    // Too low is missed as much as too high.
    const low = judgeProfile(taskOn(plan, { heights: [{ chainage: 4, height: 0.05 }] }), points);
    expect(low.heightMissed).toBeCloseTo(0.01, 12);
  });

  it('spares of clearances what the least of them leaves: over itself, over another and under another', () => {
    const over = { above: 0, below: 2, fixed: 9, least: 0.01 };
    const overOther = { above: 2, below: null, fixed: 0.004, least: 0.02 };
    const underOther = { above: null, below: 4, fixed: 0.1, least: 0.057 };
    const spare = (...clearances: (typeof over | typeof overOther | typeof underOther)[]) => {
      const found = judgeProfile(taskOn(plan, { clearances }), points);
      return [found.clearanceSpare, found.at.clearanceSpare];
    };
    // 50 - 30 - 10, 30 - 4 - 20 and 100 - 40 - 57 mm.
    const near = (wanted: readonly number[]) => wanted.map((value) => expect.closeTo(value, 12));
    expect(spare(over)).toEqual(near([0.01, 0]));
    expect(spare(over, overOther)).toEqual(near([0.006, 2]));
    expect(spare(underOther, over, overOther)).toEqual(near([0.003, 4]));
  });
});
