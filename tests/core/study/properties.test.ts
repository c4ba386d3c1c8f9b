import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greatestWhole, mapArea, sweepLine, unbeaten } from '../../../src/core/study/index.ts';

const passes = (margin: number): boolean => margin >= 0;

describe('sweepLine, whatever the edge', () => {
  const range = { from: 0, to: 100, points: 5 };

  it('brackets the one edge of a rising margin as closely as asked', async () => {
    const edge = fc.double({ min: 0.001, max: 100, noNaN: true });
    await fc.assert(
      fc.asyncProperty(edge, fc.double({ min: 0.01, max: 20, noNaN: true }), async (at, edgeWithin) => {
        const line = await sweepLine({ ...range, edgeWithin }, async (x) => x - at, passes);
        expect(line.edges).toHaveLength(1);
        const [{ passes: good, fails: bad }] = line.edges;
        expect(bad).toBeLessThan(at);
        expect(good).toBeGreaterThanOrEqual(at);
        expect(good - bad).toBeLessThanOrEqual(edgeWithin);
      }),
    );
    // Anchored: 25 between 0 and 100 with points 25 apart lies on a point, and passes there.
    const line = await sweepLine({ ...range, edgeWithin: 1 }, async (x) => x - 25, passes);
    expect(line.edges[0].passes).toBe(25);
  });

  it('asks the same of a range walked the other way', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 99 }), async (at) => {
        const up = await sweepLine({ ...range, edgeWithin: 1 }, async (x) => x - at, passes);
        const down = await sweepLine({ ...range, from: 100, to: 0, edgeWithin: 1 }, async (x) => x - at, passes);
        expect(down.points).toEqual(up.points);
        expect(down.edges).toEqual(up.edges);
      }),
    );
  });
});

describe('mapArea, whatever the slope', () => {
  it('turned over its diagonal gives the same outline turned over', async () => {
    const across = { from: 0, to: 3, points: 4 };
    const up = { from: 0, to: 2, points: 5 };
    const slope = fc.integer({ min: -4, max: 4 });
    await fc.assert(
      fc.asyncProperty(slope, slope, fc.integer({ min: -3, max: 3 }), async (a, b, c) => {
        const margin = (x: number, y: number): number => a * x + b * y + c + 0.37;
        const one = await mapArea({ across, up, refine: 2 }, async (x, y) => margin(x, y), passes);
        const other = await mapArea({ across: up, up: across, refine: 2 }, async (y, x) => margin(x, y), passes);
        const places = (pieces: typeof one.outline, turned: boolean): string[] =>
          pieces
            .map((piece) => piece.map(([x, y]) => (turned ? [y, x] : [x, y]).join()).sort())
            .map((piece) => piece.join(' '))
            .sort();
        expect(places(other.outline, true)).toEqual(places(one.outline, false));
      }),
    );
  });

  it('puts the border of a straight slope within the cell it was halved to', async () => {
    const side = { from: 0, to: 4, points: 5 };
    await fc.assert(
      fc.asyncProperty(fc.double({ min: 0.3, max: 3.7, noNaN: true }), async (at) => {
        const refine = 5;
        const area = await mapArea({ across: side, up: side, refine }, async (x) => x - at, passes);
        // An upright border crosses each of the four rows of cells once; a side of 1 halved five times, and the middle of what is left.
        expect(area.outline).toHaveLength(4);
        for (const piece of area.outline) {
          for (const [x] of piece) expect(Math.abs(x - at)).toBeLessThanOrEqual(1 / 2 ** (refine + 1));
        }
      }),
    );
  });
});

describe('unbeaten, whatever the rows', () => {
  const rows = fc.array(fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 })), { minLength: 1 });

  it('depends on order in a column alone: another rising scale changes nothing', () => {
    fc.assert(
      fc.property(rows, (table) => {
        const scaled = table.map(([a, b]) => [a * a * a, 2 * b - 7]);
        expect(unbeaten(scaled, ['least', 'most'])).toEqual(unbeaten(table, ['least', 'most']));
      }),
    );
    // Anchored: a stair of two, and one that both steps beat.
    expect(
      unbeaten(
        [
          [1, 3],
          [2, 4],
          [2, 3],
        ],
        ['least', 'most'],
      ),
    ).toEqual([0, 1]);
  });

  it('of the front alone is the front', () => {
    fc.assert(
      fc.property(rows, (table) => {
        const front = unbeaten(table, ['least', 'least']).map((k) => table[k]);
        expect(unbeaten(front, ['least', 'least'])).toHaveLength(front.length);
      }),
    );
  });
});

describe('greatestWhole, wherever the edge', () => {
  const most = 60;

  it('finds the last that passes in full, however wrong the quick look is', async () => {
    const edge = fc.integer({ min: -1, max: most });
    await fc.assert(
      fc.asyncProperty(edge, edge, async (last, guessed) => {
        const found = await greatestWhole(
          most,
          async (k) => k <= guessed,
          async (k) => k <= last,
        );
        expect(found.passes).toBe(last);
        expect(found.fails).toBe(last === most ? null : last + 1);
        expect(found.whole).toBe(true);
      }),
    );
  });

  it('needs two full looks where the quick one is right', async () => {
    // Anchored: the last that passes, and the next that fails.
    const found = await greatestWhole(
      most,
      async (k) => k <= 17,
      async (k) => k <= 17,
    );
    expect(found).toMatchObject({ passes: 17, fails: 18, looks: { full: 2 } });
  });
});
