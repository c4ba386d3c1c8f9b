import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mapArea, sweepLine } from '../../../src/core/study/index.ts';
import { turnedDirections } from '../../../src/core/study/search/directions.ts';
import {
  divideBoxes,
  type LatticePlace,
  numbersAt,
  searchFront,
  type Weigh,
  type Weighed,
} from '../../../src/core/study/search/index.ts';
import { evenly } from '../../evenly.ts';

// What reading the code alone would not show to be tried: each of these fails for one slip that the other tests let pass.

const never = (): boolean => false;
const passes = (margin: number): boolean => margin >= 0;

/** Weighs, and notes what was asked for, one list a time. */
function noting(values: (at: LatticePlace) => readonly number[]): { weigh: Weigh; asked: LatticePlace[][] } {
  const asked: LatticePlace[][] = [];
  const weigh: Weigh = async (places) => {
    asked.push([...places]);
    return places.map((at) => ({ values: values(at), missed: 0 }));
  };
  return { weigh, asked };
}

describe('directions of a round', () => {
  /** The mirror across a vector, by the textbook: 1 - 2vvᵀ/v². */
  const mirror = (v: readonly number[]): number[][] => {
    const square = v.reduce((sum, one) => sum + one * one, 0);
    return v.map((a, i) => v.map((b, k) => (i === k ? 1 : 0) - (2 * a * b) / square));
  };

  it.each([
    // Digits mirrored at the point, by hand: 4 is 100 in base 2 and 11 in base 3.
    [2, 1, [1 / 8, 1 / 3 + 1 / 9]],
    // 12 is 1100, 110, 22, 15 and 11 in bases 2, 3, 5, 7 and 11.
    [5, 1, [3 / 16, 1 / 9 + 1 / 27, 2 / 5 + 2 / 25, 5 / 7 + 1 / 49, 1 / 11 + 1 / 121]],
  ])('of %d numbers are mirrored across the vector of the Halton sequence', (numbers, round, point) => {
    const expected = mirror(point.map((one) => 2 * one - 1));
    const found = turnedDirections(numbers, round);
    for (const [i, row] of expected.entries()) {
      for (const [k, value] of row.entries()) expect(found[i][k]).toBeCloseTo(value, 12);
    }
  });

  it('stand at right angles, each of length 1, and come near to every direction of the plane', () => {
    const seen = new Set<number>();
    for (let round = 1; round <= 400; round++) {
      const [[a, b], [c, d]] = turnedDirections(2, round);
      expect(a * c + b * d).toBeCloseTo(0, 12);
      expect(a * a + b * b).toBeCloseTo(1, 12);
      // Directions are looked along both ways: half a turn, in parts of 5°.
      for (const [x, y] of [
        [a, b],
        [c, d],
      ])
        seen.add(Math.floor((((Math.atan2(y, x) * 180) / Math.PI + 180) % 180) / 5));
    }
    expect(seen.size).toBe(36);
  });
});

describe('a search', () => {
  it('is settled only when a step either way of every number has been looked at, however unlike their ranges', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 2, max: 5 }),
        fc.integer({ min: 30, max: 90 }),
        fc.integer({ min: 1, max: 1000 }),
        async (few, many, stride) => {
          // Rough ground: any value anywhere, one of them at each place.
          const value = ([x, y]: LatticePlace): number => ((x * 7919 + y * stride * 31) % 101) + 0.001 * (x * many + y);
          const { weigh, asked } = noting((at) => [value(at)]);
          const middle = [few >> 1, many >> 1];
          const start: Weighed[] = [{ at: middle, worth: { values: [value(middle)], missed: 0 } }];
          const spec = { settings: [few, many], wishes: ['least'], probes: 5000 } as const;
          const { front, settled } = await searchFront(spec, start, weigh, never);
          expect(settled).toBe(true);
          const known = new Set([...asked.flat(), middle].map((at) => at.join()));
          const [{ at }] = front;
          for (const beside of [
            [at[0] + 1, at[1]],
            [at[0] - 1, at[1]],
            [at[0], at[1] + 1],
            [at[0], at[1] - 1],
          ]) {
            if (beside[0] < 0 || beside[0] >= few || beside[1] < 0 || beside[1] >= many) continue;
            expect(known).toContain(beside.join());
            expect(value(beside)).toBeGreaterThan(value(at));
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('looks around each of those unbeaten before it looks around one again', async () => {
    // Two wishes that the two ends of a line serve; in between both are served badly, but a little better towards each end.
    const value = ([x]: LatticePlace): readonly number[] => [x, 400 - x];
    const { weigh, asked } = noting(value);
    const start = [0, 400].map((x): Weighed => ({ at: [x], worth: { values: value([x]), missed: 0 } }));
    const spec = { settings: [401], wishes: ['least', 'least'], probes: 3 } as const;
    await searchFront(spec, start, weigh, never);
    // A quarter of the range to either side of each, in turn; what the first look finds comes behind the second.
    expect(asked.slice(0, 2)).toEqual([[[100]], [[300]]]);
  });

  it('cuts, of boxes of three sizes, none that promises less than those on either side of it', async () => {
    // By hand, on a line of 81 settings with one deep place in the middle (0), 10 near it and 10.1 far from it. Cut in three each time:
    // round 1 the whole; 2 its middle third; 3 the middle ninth and, largest, the first outer third; 4 the middle 27th and the other outer third. The ninths at 10 lie
    // above the line from 0 at 1/54 to 10.1 at 1/6, which is 2.5 at their size.
    const middle = 40;
    const value = ([k]: LatticePlace): readonly number[] => [k === middle ? 0 : Math.abs(k - middle) < 20 ? 10 : 10.1];
    const { weigh, asked } = noting(value);
    await divideBoxes({ settings: [81], value: 0, wish: 'least', probes: 10 }, weigh, never);
    const at = (shares: readonly number[]): LatticePlace[] => shares.map((share) => [Math.floor(share * 81)]);
    expect(asked[0]).toEqual(at([1 / 2]));
    expect(asked[1]).toEqual(at([1 / 6, 5 / 6]));
    expect(asked[2]).toEqual(at([7 / 18, 11 / 18]));
    expect([...asked[3]].sort()).toEqual([...at([25 / 54, 29 / 54]), ...at([1 / 18, 5 / 18])].sort());
    expect([...asked[4]].sort()).toEqual([...at([79 / 162, 83 / 162]), ...at([13 / 18, 17 / 18])].sort());
  });

  it('names settings without the dust of binary sums, above and below', () => {
    expect(0.7 + 0.1).toBeLessThan(0.8);
    expect(numbersAt([{ from: 0.7, to: 1, step: 0.1 }], [1])).toEqual([0.8]);
    expect(3 * 0.1).toBeGreaterThan(0.3);
    expect(numbersAt([{ from: 0, to: 1, step: 0.1 }], [3])).toEqual([0.3]);
  });
});

describe('probes', () => {
  it('allowed in broken numbers are as many as are whole', async () => {
    let [under, most] = [0, 0];
    const probe = async (x: number): Promise<number> => {
      most = Math.max(most, ++under);
      await new Promise((resolve) => setTimeout(resolve, 1));
      under--;
      return x;
    };
    await sweepLine({ from: 0, to: 1, points: 9, edgeWithin: 1 }, probe, passes, { width: 2.9 });
    expect(most).toBe(2);
  });
});

describe('a map', () => {
  it('ends exactly where it was asked to', async () => {
    const end = evenly(-1e3, 1e3);
    await fc.assert(
      fc.asyncProperty(end, end, fc.integer({ min: 2, max: 7 }), async (a, b, points) => {
        fc.pre(a !== b);
        const side = { from: Math.min(a, b), to: Math.max(a, b), points };
        const map = await mapArea({ across: side, up: side, refine: 0 }, async (x) => x, passes);
        for (const values of [map.across, map.up]) {
          expect(values).toHaveLength(points);
          expect(values[0]).toBe(side.from);
          expect(values.at(-1)).toBe(side.to);
        }
      }),
    );
  });

  it('stopped while it refines keeps each border where it was known', async () => {
    let done = 0;
    const side = { from: 0, to: 4, points: 5 };
    const map = await mapArea(
      { across: side, up: side, refine: 6 },
      async (x) => {
        done++;
        return x - 1.3;
      },
      (margin) => {
        // Only what was probed is judged.
        expect(typeof margin).toBe('number');
        return margin >= 0;
      },
      // The grid is 25; the first halving of five sides is stopped after two.
      { stopped: () => done >= 27 },
    );
    expect(map.whole).toBe(false);
    expect(map.probes).toBe(27);
    // Two borders halved once, to 1 and 1.5, the rest between 1 and 2.
    const at = map.outline.flatMap((piece) => piece.map(([x]) => x));
    expect(new Set(at)).toEqual(new Set([1.25, 1.5]));
  });
});
