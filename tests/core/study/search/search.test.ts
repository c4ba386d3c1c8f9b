import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allPlaces,
  type Choice,
  divideBoxes,
  numbersAt,
  searchFront,
  settingsOf,
  unbeatenOf,
  type Weigh,
  type Weighed,
} from '../../../../src/core/study/search/index.ts';

const never = (): boolean => false;

/** Weighs by the numbers at a place, and keeps every limit where `missed` says nothing else. */
const weighBy =
  (
    choices: readonly Choice[],
    values: (numbers: readonly number[]) => readonly number[],
    missed: (numbers: readonly number[]) => number = () => 0,
  ): Weigh =>
  async (places) =>
    places.map((at) => {
      const numbers = numbersAt(choices, at);
      return { values: values(numbers), missed: missed(numbers) };
    });

const leastOf = (found: readonly Weighed[]): Weighed => unbeatenOf(found, ['least'])[0];

async function leastBy(
  choices: readonly Choice[],
  value: (x: readonly number[]) => number,
  missed?: (x: readonly number[]) => number,
  probes = 400,
): Promise<{ least: number; numbers: number[]; settled: boolean }> {
  const settings = settingsOf(choices);
  const weigh = weighBy(choices, (x) => [value(x)], missed);
  const seen = await divideBoxes({ settings, value: 0, wish: 'least', probes }, weigh, never);
  const { front, settled } = await searchFront({ settings, wishes: ['least'], probes }, seen, weigh, never);
  const best = leastOf(front);
  return { least: best.worth.values[0], numbers: numbersAt(choices, best.at), settled };
}

describe('a lattice', () => {
  it('has the settings between two ends, the last within the range', () => {
    expect(settingsOf([{ from: 400, to: 600, step: 10 }])).toEqual([21]);
    expect(settingsOf([{ from: 0, to: 1, step: 0.1 }])).toEqual([11]);
    expect(settingsOf([{ from: 0, to: 1, step: 0.3 }])).toEqual([4]);
    expect(numbersAt([{ from: 0, to: 1, step: 0.1 }], [3])).toEqual([0.3]);
    expect(allPlaces([2, 3])).toHaveLength(6);
  });

  it.each([
    { from: 1, to: 1, step: 1 },
    { from: 0, to: 1, step: 0 },
    { from: 0, to: 1, step: 2 },
  ])('refuses %o', (choice) => {
    expect(() => settingsOf([choice])).toThrow(RangeError);
  });
});

describe('divideBoxes', () => {
  it('finds the least of all settings of a number, whatever the dips', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 2, maxLength: 40 }), async (heights) => {
        // With room to ask for every place it must end at the least of all.
        const weigh: Weigh = async (places) => places.map(([k]) => ({ values: [heights[k]], missed: 0 }));
        const spec = { settings: [heights.length], value: 0, wish: 'least', probes: 1000 } as const;
        const seen = await divideBoxes(spec, weigh, never);
        expect(seen).toHaveLength(heights.length);
        expect(leastOf(seen).worth.values[0]).toBe(Math.min(...heights));
      }),
    );
  });

  it('wishing for the most is wishing for the least of the negative', async () => {
    const choices = [
      { from: -2, to: 2, step: 0.01 },
      { from: -1, to: 2, step: 0.01 },
    ];
    const settings = settingsOf(choices);
    const bowl = ([x, y]: readonly number[]): number => (x - 0.7) * (x - 0.7) + (y - 1.1) * (y - 1.1);
    const spec = { settings, value: 0, probes: 200 };
    const down = await divideBoxes(
      { ...spec, wish: 'least' },
      weighBy(choices, (x) => [bowl(x)]),
      never,
    );
    const up = await divideBoxes(
      { ...spec, wish: 'most' },
      weighBy(choices, (x) => [-bowl(x)]),
      never,
    );
    expect(up.map(({ at }) => at)).toEqual(down.map(({ at }) => at));
  });

  it('comes out the same in every run, and keeps what is known when stopped', async () => {
    const choices = [{ from: 0, to: 10, step: 0.001 }];
    const weigh = weighBy(choices, ([x]) => [(x - 3.3) * (x - 3.3)]);
    const spec = { settings: settingsOf(choices), value: 0, wish: 'least', probes: 60 } as const;
    const one = await divideBoxes(spec, weigh, never);
    expect(await divideBoxes(spec, weigh, never)).toEqual(one);
    let asked = 0;
    const part = await divideBoxes(spec, weigh, () => ++asked > 3);
    expect(part.length).toBeGreaterThan(0);
    expect(part).toEqual(one.slice(0, part.length));
  });
});

describe('searchFront', () => {
  it('follows a limit that cuts across all numbers, where looking along them alone would stick', async () => {
    // The sum of two numbers with x + 2y ≥ 5 and 2x + y ≥ 5: least 10/3 where both hold at once, x = y = 5/3.
    const choices = [
      { from: 0, to: 5, step: 0.001 },
      { from: 0, to: 5, step: 0.001 },
    ];
    const found = await leastBy(
      choices,
      ([x, y]) => x + y,
      ([x, y]) => Math.max(0, 5 - x - 2 * y) + Math.max(0, 5 - 2 * x - y),
      600,
    );
    expect(found.least).toBeGreaterThanOrEqual(10 / 3);
    expect(found.least).toBeLessThan(10 / 3 + 0.01);
  });

  it('finds the whole front of two wishes that a grid finds', async () => {
    // Schaffer's pair x² and (x - 2)²: the front is every x from 0 to 2 (J. D. Schaffer 1985).
    const choices = [{ from: -4, to: 4, step: 0.25 }];
    const weigh = weighBy(choices, ([x]) => [x * x, (x - 2) * (x - 2)]);
    const start = [{ at: [0], worth: { values: [16, 36], missed: 0 } }];
    const spec = { settings: settingsOf(choices), wishes: ['least', 'least'], probes: 500 } as const;
    const { front, settled } = await searchFront(spec, start, weigh, never);
    expect(settled).toBe(true);
    const at = front.map((one) => numbersAt(choices, one.at)[0]).sort((a, b) => a - b);
    expect(at).toEqual([0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2]);
  });

  it('finds in a bowl, wherever its bottom lies, a place that no neighbour beats', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }), async (a, b) => {
        const weigh: Weigh = async (places) =>
          places.map(([x, y]) => ({ values: [(x - a) * (x - a) + 3 * (y - b) * (y - b)], missed: 0 }));
        const [worth] = (await weigh([[30, 30]])) as [Weighed['worth']];
        const spec = { settings: [61, 61], wishes: ['least'], probes: 2000 } as const;
        const { front, settled } = await searchFront(spec, [{ at: [30, 30], worth }], weigh, never);
        expect(settled).toBe(true);
        expect(front.map(({ at }) => at)).toEqual([[a, b]]);
      }),
      { numRuns: 30 },
    );
  });

  it('has nothing to start from where every place misses a limit', async () => {
    const start = [{ at: [1], worth: { values: [1], missed: 2 } }];
    const { front } = await searchFront({ settings: [3], wishes: ['least'], probes: 10 }, start, async () => [], never);
    expect(front).toEqual([]);
  });
});
