import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  latinHypercube,
  mapArea,
  proportion,
  rankCorrelation,
  sweepLine,
  unbeaten,
} from '../../../src/core/study/index.ts';
import { evenly } from '../../evenly.ts';

const passes = (margin: number): boolean => margin >= 0;

describe('sweepLine', () => {
  it('pins down every edge between its points to the width asked for', async () => {
    // Passes between the two roots of a parabola: 2 and 7.
    const line = await sweepLine(
      { from: 0, to: 10, points: 6, edgeWithin: 0.01 },
      async (x) => (x - 2.003) * (7.1 - x),
      passes,
    );
    expect(line.whole).toBe(true);
    expect(line.edges).toHaveLength(2);
    const [low, high] = line.edges;
    expect(low.fails).toBeLessThan(2.003);
    expect(low.passes).toBeGreaterThanOrEqual(2.003);
    expect(low.passes - low.fails).toBeLessThanOrEqual(0.01);
    expect(high.passes).toBeLessThanOrEqual(7.1);
    expect(high.fails).toBeGreaterThan(7.1);
    const values = line.points.map(({ at }) => at);
    expect(values).toEqual([...values].sort((a, b) => a - b));
    // Six even points and ceil(log2(2 / 0.01)) = 8 halvings of each of two intervals.
    expect(line.points).toHaveLength(6 + 2 * 8);
  });

  it('gives the same whatever the number of probes under way at once, and whichever ends first', async () => {
    const spec = { from: 0, to: 1, points: 9, edgeWithin: 1e-3 };
    const one = await sweepLine(spec, async (x) => x - 0.37, passes);
    let turn = 0;
    const slow = async (x: number): Promise<number> => {
      await new Promise((resolve) => setTimeout(resolve, (turn++ * 7) % 5));
      return x - 0.37;
    };
    expect(await sweepLine(spec, slow, passes, { width: 4 })).toEqual(one);
  });

  it('keeps what is done when stopped, and says so', async () => {
    let done = 0;
    const line = await sweepLine(
      { from: 0, to: 1, points: 9, edgeWithin: 1e-6 },
      async (x) => {
        done++;
        return x - 0.5001;
      },
      passes,
      { stopped: () => done >= 5 },
    );
    expect(line.whole).toBe(false);
    expect(line.points).toHaveLength(5);
  });

  it('passes an error on and refuses ranges that say nothing', async () => {
    const spec = { from: 0, to: 1, points: 3, edgeWithin: 0.1 };
    await expect(sweepLine(spec, () => Promise.reject(new Error('off the track')), passes)).rejects.toThrow(
      'off the track',
    );
    await expect(sweepLine({ ...spec, to: 0 }, async (x) => x, passes)).rejects.toThrow(RangeError);
    await expect(sweepLine({ ...spec, points: 1 }, async (x) => x, passes)).rejects.toThrow(RangeError);
    await expect(sweepLine({ ...spec, edgeWithin: 0 }, async (x) => x, passes)).rejects.toThrow(RangeError);
  });
});

describe('mapArea', () => {
  const disc = async (x: number, y: number): Promise<number> => 1 - x * x - y * y;
  const side = { from: -1.3, to: 1.3, points: 14 };

  it('outlines a disc: every place of the outline lies on the circle, and together they go once round', async () => {
    const refine = 8;
    const area = await mapArea({ across: side, up: side, refine }, disc, passes);
    // A halved side leaves the border within its cell divided by 2^(refine + 1), seen at up to 45 degrees to the circle.
    const within = (2.6 / 13) * 0.5 ** (refine + 1) * Math.SQRT2;
    let round = 0;
    for (const [a, b] of area.outline) {
      expect(Math.abs(Math.hypot(...a) - 1)).toBeLessThan(within);
      expect(Math.abs(Math.hypot(...b) - 1)).toBeLessThan(within);
      round += Math.hypot(a[0] - b[0], a[1] - b[1]);
    }
    // Chords fall short of the circle by (chord / diameter)² / 6 of it, with chords of at most a cell's diagonal 0.283.
    expect(round).toBeLessThan(2 * Math.PI + 0.01);
    expect(round).toBeGreaterThan(2 * Math.PI * (1 - 0.283 ** 2 / 24) - 0.01);
    expect(area.outcomes).toHaveLength(14 * 14);
    expect(area.outcomes[0]).toBeCloseTo(1 - 2 * 1.69, 12);
  });

  it('keeps two passing corners of a saddle apart', async () => {
    const area = await mapArea(
      { across: { from: -1, to: 1, points: 2 }, up: { from: -1, to: 1, points: 2 }, refine: 0 },
      async (x, y) => x * y,
      passes,
    );
    expect(area.outline).toHaveLength(2);
    // Passing corners (1, 1) and (-1, -1): each cut runs round its own corner, so its middle lies in that corner's quarter.
    const middles = area.outline.map(([a, b]) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
    for (const [x, y] of middles) expect(x * y).toBeGreaterThan(0);
  });

  it('keeps what is done when stopped', async () => {
    let done = 0;
    const area = await mapArea(
      { across: side, up: side, refine: 3 },
      async (x, y) => {
        done++;
        return disc(x, y);
      },
      passes,
      { stopped: () => done >= 30 },
    );
    expect(area.whole).toBe(false);
    expect(area.outcomes.filter((outcome) => outcome !== null)).toHaveLength(30);
  });
});

describe('unbeaten', () => {
  it('finds the front of a known set', () => {
    const rows = [
      [2.0, 600],
      [2.4, 500],
      [2.4, 600],
      [3.0, 450],
      [3.0, 500],
      [Number.NaN, 1],
    ];
    expect(unbeaten(rows, ['least', 'least'])).toEqual([0, 1, 3]);
    expect(unbeaten(rows, ['most', 'most'])).toEqual([2, 4]);
  });

  it('leaves nobody on the front who is beaten, and nobody off it who is not', () => {
    const row = fc.tuple(
      fc.integer({ min: 0, max: 9 }),
      fc.integer({ min: 0, max: 9 }),
      fc.integer({ min: 0, max: 9 }),
    );
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 30 }), (rows) => {
        const front = unbeaten(rows, ['most', 'least', 'most']);
        rows.forEach((one, k) => {
          const beaten = rows.some(
            (o) =>
              o[0] >= one[0] && o[1] <= one[1] && o[2] >= one[2] && (o[0] > one[0] || o[1] < one[1] || o[2] > one[2]),
          );
          expect(front.includes(k)).toBe(!beaten);
        });
      }),
    );
  });
});

describe('latinHypercube', () => {
  it('puts one point into every slice of every side, the same for the same seed', () => {
    const points = latinHypercube(40, 3, 7);
    for (let side = 0; side < 3; side++) {
      const slices = Array.from({ length: 40 }, (_, k) => Math.floor(points[k * 3 + side] * 40)).sort((a, b) => a - b);
      expect(slices).toEqual(Array.from({ length: 40 }, (_, k) => k));
    }
    expect(latinHypercube(40, 3, 7)).toEqual(points);
    expect(latinHypercube(40, 3, 8)).not.toEqual(points);
    expect(() => latinHypercube(0, 1, 1)).toThrow(RangeError);
  });

  it('does not tie the sides to each other', () => {
    const points = latinHypercube(400, 2, 3);
    const column = (side: number) => Array.from({ length: 400 }, (_, k) => points[k * 2 + side]);
    // Rank correlation of independent columns has standard deviation 1/sqrt(n - 1) = 0.05; four of them.
    expect(Math.abs(rankCorrelation(column(0), column(1)))).toBeLessThan(0.2);
  });
});

describe('rankCorrelation', () => {
  it('is 1 or -1 for any rising or falling curve, whatever its shape', () => {
    const x = [0.1, 0.5, 0.9, 2, 3];
    expect(
      rankCorrelation(
        x,
        x.map((v) => v ** 5),
      ),
    ).toBeCloseTo(1, 12);
    expect(
      rankCorrelation(
        x,
        x.map((v) => -Math.exp(v)),
      ),
    ).toBeCloseTo(-1, 12);
    expect(rankCorrelation(x, [1, 1, 1, 1, 1])).toBeNaN();
    expect(() => rankCorrelation([1], [1, 2])).toThrow(RangeError);
  });

  it('agrees with 1 - 6·sum(d²)/(n³ - n), the textbook form for columns without ties', () => {
    // Ranks 1..7 against 2 1 4 3 6 5 7: six differences of 1, so 1 - 36/336.
    expect(rankCorrelation([10, 20, 30, 40, 50, 60, 70], [2, 1, 4, 3, 6, 5, 7])).toBeCloseTo(1 - 36 / 336, 12);
  });
});

describe('proportion', () => {
  it('solves the score equation that defines the interval', () => {
    // Wilson (1927): the limits p are where (share - p)² = z²·p(1 - p)/n; checked by putting them in.
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), evenly(0, 1), (count, part) => {
        const hits = Math.round(part * count);
        const { share, low, high } = proportion(hits, count);
        for (const limit of [low, high]) {
          expect((share - limit) ** 2).toBeCloseTo((1.959964 ** 2 * limit * (1 - limit)) / count, 6);
        }
        expect(low).toBeLessThanOrEqual(share);
        expect(high).toBeGreaterThanOrEqual(share);
      }),
    );
  });

  it('covers the true share about as often as it says', async () => {
    const { seededRandom } = await import('../../../src/core/math/index.ts');
    const random = seededRandom(5);
    let covered = 0;
    const rounds = 2000;
    for (let round = 0; round < rounds; round++) {
      let hits = 0;
      for (let k = 0; k < 60; k++) if (random.uniform() < 0.9) hits++;
      const { low, high } = proportion(hits, 60);
      if (low <= 0.9 && 0.9 <= high) covered++;
    }
    // 95 % nominal; Wilson's actual coverage at n = 60, p = 0.9 is 0.93 to 0.96, and 2000 rounds add ±0.01.
    expect(covered / rounds).toBeGreaterThan(0.92);
    expect(covered / rounds).toBeLessThan(0.98);
  });

  it('does not take none for never', () => {
    expect(proportion(0, 20).high).toBeCloseTo(0.1611, 4);
    expect(proportion(20, 20).low).toBeCloseTo(1 - 0.1611, 4);
    expect(() => proportion(3, 2)).toThrow(RangeError);
  });
});
