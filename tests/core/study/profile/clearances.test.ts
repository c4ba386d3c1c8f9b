import { describe, expect, it } from 'vitest';
import { clearancesOf } from '../../../../src/core/study/profile/index.ts';
import { arc, straight } from '../../../../src/core/track/index.ts';
import { trackOn } from './samples.ts';

/** Looked at every 30 mm, as half of `within`. */
const decks = { least: 0.05, within: 0.06 };
const line = trackOn([straight(3)], [{ chainage: 0, height: 0.02 }]);
/** There at x = 1 and back at x = 1.6, both across the line, which is at y = 0. */
const loop = (height: number) =>
  trackOn([straight(1.5), arc(0.3, -Math.PI), straight(1.5)], [{ chainage: 0, height }], {
    x: 1,
    y: -0.905,
    heading: Math.PI / 2,
  });

describe('where a line passes another', () => {
  it('is told for every place within reach of each pass, once, with the height that stays', () => {
    const found = clearancesOf(line, { ...decks, others: [loop(0.1)] });
    // 0.96, 0.99, 1.02, 1.05 and 1.56, 1.59, 1.62, 1.65: within 60 mm of 1 and of 1.6.
    const places = found.map(({ below }) => Math.round((below ?? -1) * 1e3)).sort((a, b) => a - b);
    expect(places).toEqual([960, 990, 1020, 1050, 1560, 1590, 1620, 1650]);
    for (const { above, fixed, least } of found) {
      expect(above).toBeNull();
      expect(fixed).toBeCloseTo(0.1, 12);
      expect(least).toBe(0.05);
    }
  });

  it('puts the line above what lies lower', () => {
    const found = clearancesOf(line, { ...decks, others: [loop(-0.1)] });
    expect(found.map(({ below }) => below)).toEqual(Array(8).fill(null));
    expect(found.every(({ above, fixed }) => above !== null && Math.abs(fixed + 0.1) < 1e-12)).toBe(true);
  });

  it('takes no notice of what stays out of reach', () => {
    const beside = trackOn([straight(3)], [{ chainage: 0, height: 0.1 }], { x: 0, y: 0.061, heading: 0 });
    expect(clearancesOf(line, { ...decks, others: [beside] })).toEqual([]);
  });

  it('is no pass of the line over itself where it only runs on', () => {
    expect(
      clearancesOf(
        trackOn(
          [straight(1)],
          [
            { chainage: 0, height: 0 },
            { chainage: 1, height: 0.03 },
          ],
        ),
        { ...decks, others: [] },
      ),
    ).toEqual([]);
  });

  it('takes of a line over itself the higher for the one above, once a pair', () => {
    // A figure that crosses itself square at (1, 0): on 1.5 m, three quarters of a turn to the left on 0.5 m, and 1 m on, climbing 2 % all the way.
    const length = 1.5 + 0.75 * 2 * Math.PI * 0.5 + 1;
    const climbing = [
      { chainage: 0, height: 0 },
      { chainage: length, height: 0.02 * length },
    ];
    const crossing = trackOn([straight(1.5), arc(0.5, 1.5 * Math.PI), straight(1)], climbing);
    const found = clearancesOf(crossing, { ...decks, others: [] });
    expect(found.length).toBeGreaterThan(2);
    for (const { above, below } of found) {
      // Half a metre short of the arc at first, half a metre behind it then.
      expect(Math.abs((below ?? 0) - 1)).toBeLessThan(0.06);
      expect(Math.abs((above ?? 0) - (length - 0.5))).toBeLessThan(0.06);
    }
    expect(new Set(found.map(({ below }) => below)).size).toBe(found.length);
  });
});
