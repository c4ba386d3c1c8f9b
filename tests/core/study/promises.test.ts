import { describe, expect, it } from 'vitest';
import { greatestWhole, latinHypercube, mapArea, rankCorrelation, sweepLine } from '../../../src/core/study/index.ts';

const passes = (margin: number): boolean => margin >= 0;

describe('rank correlation of columns with ties', () => {
  it('gives equal values the mean of their ranks, in whatever order the rows come', () => {
    // By hand, as the product-moment correlation of ranks 1, 2½, 2½, 4 with 1, 2, 3, 4: 4.5/√(4.5 · 5).
    const textbook = 4.5 / Math.sqrt(4.5 * 5);
    expect(rankCorrelation([10, 20, 20, 30], [1, 2, 3, 4])).toBeCloseTo(textbook, 12);
    expect(rankCorrelation([30, 20, 10, 20], [4, 3, 1, 2])).toBeCloseTo(textbook, 12);
    expect(rankCorrelation([1, 2, 3, 4], [10, 20, 20, 30])).toBeCloseTo(textbook, 12);
    // Ties at both ends: ranks 1½, 1½, 3½, 3½ with 1, 2, 3, 4 give 4/√(4 · 5).
    expect(rankCorrelation([0, 0, 5, 5], [1, 2, 3, 4])).toBeCloseTo(4 / Math.sqrt(20), 12);
  });
});

describe('a Latin hypercube', () => {
  it('draws evenly within its slices, in an order that is any', () => {
    const count = 400;
    const points = latinHypercube(count, 1, 11);
    // Mean of a uniform draw: ½, with a standard deviation of 1/√(12 n); its variance 1/12, with one of √(1/180/n). Four of each.
    const within = [...points].map((value) => value * count - Math.floor(value * count));
    const mean = within.reduce((sum, value) => sum + value, 0) / count;
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 / Math.sqrt(12 * count));
    const variance = within.reduce((sum, value) => sum + (value - 0.5) * (value - 0.5), 0) / count;
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 / Math.sqrt(180 * count));
    // Slices against the order they are drawn in: no correlation, standard deviation 1/√(n - 1).
    const turn = Array.from({ length: count }, (_, k) => k);
    expect(Math.abs(rankCorrelation([...points], turn))).toBeLessThan(4 / Math.sqrt(count - 1));
  });

  it('has at least one point and one side', () => {
    expect(latinHypercube(1, 1, 1)).toHaveLength(1);
    for (const [count, sides] of [
      [1, 0],
      [1.5, 1],
      [1, 1.5],
    ] as const) {
      expect(() => latinHypercube(count, sides, 1)).toThrow(RangeError);
    }
  });
});

describe('studies and their hooks', () => {
  it('tell of every probe once, how many are done and how many are needed as far as known', async () => {
    const told: [number, number][] = [];
    const line = await sweepLine({ from: 0, to: 1, points: 3, edgeWithin: 0.2 }, async (x) => x - 0.6, passes, {
      onProgress: (done, known) => told.push([done, known]),
    });
    // Three even points; then 0.5 to 1 is halved at 0.75 and at 0.625.
    expect(line.points.map(({ at }) => at)).toEqual([0, 0.5, 0.625, 0.75, 1]);
    expect(told).toEqual([
      [1, 3],
      [2, 3],
      [3, 3],
      [4, 4],
      [5, 5],
    ]);
  });

  it('have as many probes under way as allowed and never more', async () => {
    for (const [width, most] of [
      [undefined, 1],
      [0, 1],
      [3, 3],
      [50, 9],
    ] as const) {
      let under = 0;
      let greatest = 0;
      await sweepLine(
        { from: 0, to: 1, points: 9, edgeWithin: 1 },
        async (x) => {
          greatest = Math.max(greatest, ++under);
          await new Promise((resolve) => setTimeout(resolve, 1));
          under--;
          return x;
        },
        passes,
        width === undefined ? {} : { width },
      );
      expect(greatest).toBe(most);
    }
  });

  it('probe no place twice', async () => {
    const seen: string[] = [];
    const side = { from: 0, to: 2, points: 3 };
    const area = await mapArea(
      { across: side, up: side, refine: 3 },
      async (x, y) => {
        seen.push(`${x} ${y}`);
        return x - y - 0.3;
      },
      passes,
    );
    expect(new Set(seen).size).toBe(seen.length);
    expect(area.probes).toBe(seen.length);
  });
});

describe('a map', () => {
  it('is of two points a side at least, from low to high', async () => {
    const side = { from: 0, to: 1, points: 2 };
    const map = (across: typeof side) => mapArea({ across, up: side, refine: 0 }, async (x) => x, passes);
    expect((await map(side)).across).toEqual([0, 1]);
    for (const bad of [
      { points: 1 },
      { points: 2.5 },
      { from: 1 },
      { from: 2 },
      { to: Number.POSITIVE_INFINITY },
      { from: Number.NEGATIVE_INFINITY },
    ]) {
      await expect(map({ ...side, ...bad })).rejects.toThrow(RangeError);
    }
  });
});

describe('the greatest whole number', () => {
  const upTo = (last: number) => async (k: number) => k <= last;

  it('may be asked up to nothing, and not below', async () => {
    expect(await greatestWhole(0, upTo(0), upTo(0))).toMatchObject({ passes: 0, fails: null, whole: true });
    expect(await greatestWhole(0, upTo(-1), upTo(-1))).toMatchObject({ passes: -1, fails: 0, whole: true });
    await expect(greatestWhole(-1, upTo(0), upTo(0))).rejects.toThrow(RangeError);
    await expect(greatestWhole(2.5, upTo(0), upTo(0))).rejects.toThrow(RangeError);
  });

  it('says no more than it knows when stopped', async () => {
    let looks = 0;
    const found = await greatestWhole(
      60,
      upTo(17),
      async (k) => {
        looks++;
        return k <= 17;
      },
      { stopped: () => looks >= 1 },
    );
    // One full look, at the quick one's guess: 17 passes, and nothing is known of 18.
    expect(found).toMatchObject({ passes: 17, fails: null, whole: false, looks: { full: 1 } });
  });
});
