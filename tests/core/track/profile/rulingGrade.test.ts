import { describe, expect, it } from 'vitest';
import { arc, makeTrack, reverseTrack, rulingGrade, straight, type Track } from '../../../../src/core/track/index.ts';

const hill = (...elements: Parameters<typeof makeTrack>[0]['elements'][number][]): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements,
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 1, height: 0.03 },
        { chainage: 3, height: 0.05 },
        { chainage: 4, height: 0.01 },
      ],
    },
  });

const options = { window: 0, towards: 'end', curveLength: 0 } as const;

describe('the ruling grade', () => {
  const track = hill(straight(4));

  it('of a single place is the steepest, either way', () => {
    expect(rulingGrade(track, options).grade).toBeCloseTo(0.03, 14);
    expect(rulingGrade(track, { ...options, towards: 'start' }).grade).toBeCloseTo(0.04, 14);
  });

  it('of a train is its mean: 1.5 m over 3 % and 1 % at best 1 m of the one and half of the other', () => {
    const { grade, from, to } = rulingGrade(track, { ...options, window: 1.5 });
    expect(grade).toBeCloseTo((0.03 + 0.005) / 1.5, 12);
    expect([from, to]).toEqual([0, 1.5]);
  });

  it('of a train as long as the track, or longer, is the mean of all', () => {
    for (const window of [4, 9]) expect(rulingGrade(track, { ...options, window }).grade).toBeCloseTo(0.0025, 14);
  });

  it('counts a curve as grade: 8.13 mm over 0.6 m of radius are 1.355 %', () => {
    // G + 32/R with R in inches, per cent: 0.32 in over R (a rule of the trade, measured once; common practice).
    const curved = hill(straight(1), arc(0.6, 1 / 0.6), straight(2));
    const counted = rulingGrade(curved, { ...options, curveLength: 0.00813 });
    expect(counted.grade).toBeCloseTo(0.03, 14);
    const train = rulingGrade(curved, { ...options, window: 1, curveLength: 0.03 });
    // Wholly on the curve: 1 % and 5 %, against 3 % on the straight before.
    expect(train.grade).toBeCloseTo(0.06, 4);
    expect(train.rise).toBeCloseTo(0.01, 4);
    // Places are 2 mm apart.
    expect(Math.abs(train.from - 1)).toBeLessThanOrEqual(0.002 + 1e-12);
  });

  it('sees what a high support does to it', () => {
    const strip = { supports: [0, 0, 0.002, 0, 0].map((departure, i) => ({ chainage: i, departure })), hinges: [] };
    const bent = makeTrack({ ...track.spec, profile: { points: [{ chainage: 0, height: 0 }], strip } });
    // More than the straight line to the raised support, 0.2 %, and less than the 0.3 % of a lone span's free end.
    const found = rulingGrade(bent, options);
    expect(found.grade).toBeGreaterThan(0.002);
    expect(found.grade).toBeLessThan(0.002 * 1.5);
  });

  it('is the same from the other end', () => {
    const one = rulingGrade(track, { ...options, window: 0.7 });
    const other = rulingGrade(reverseTrack(track), { ...options, window: 0.7, towards: 'start' });
    expect(other.grade).toBeCloseTo(one.grade, 12);
  });

  it('is refused for a train of negative length', () => {
    expect(() => rulingGrade(track, { ...options, window: -1 })).toThrow(RangeError);
  });
});
