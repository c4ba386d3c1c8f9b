import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Columns,
  leastMargins,
  stretchesOf,
  strongestForces,
  sweep,
  widenStretches,
} from '../../../../src/ui/band/frame/columns.ts';

const nowhere = Number.NaN;

/** The stretch of axis a frame stands for, in columns, straight from the definition. */
function cellOf(places: readonly number[], f: number, jump: number, { from, perUnit }: Columns): [number, number] {
  const toward = (other: number | undefined) =>
    other === undefined || Number.isNaN(other) || Math.abs(other - places[f]) > jump
      ? places[f]
      : (other + places[f]) / 2;
  const edges = [places[f], toward(places[f - 1]), toward(places[f + 1])].map((at) => (at - from) * perUnit);
  return [Math.min(...edges), Math.max(...edges)];
}

/** Whether a cell touches column c: it reaches into [c, c + 1), or is a point of it. */
const touches = ([low, high]: [number, number], c: number): boolean =>
  (low < c + 1 && high > c) || Math.floor(low) === c;

const travel = fc
  .tuple(
    fc.double({ min: -2, max: 2, noNaN: true }),
    fc.array(fc.double({ min: -0.4, max: 0.6, noNaN: true }), { maxLength: 60 }),
  )
  .map(([start, steps]) => {
    const places = [start];
    for (const step of steps) places.push(places[places.length - 1] + step);
    return places;
  });
const view = fc.record({
  from: fc.double({ min: -1, max: 2, noNaN: true }),
  perUnit: fc.double({ min: 0.5, max: 40, noNaN: true }),
  count: fc.integer({ min: 1, max: 80 }),
});

describe('columns', () => {
  test('the strongest force in each column, against trying every frame on every column', () => {
    const force = fc.oneof(fc.constant(0), fc.double({ min: -3, max: 3, noNaN: true }));
    fc.assert(
      fc.property(travel, fc.infiniteStream(force), view, (places, stream, columns) => {
        const forces = places.map(() => stream.next().value);
        const found = strongestForces(Float64Array.from(places), 10, Float64Array.from(forces), columns);
        for (let c = 0; c < columns.count; c++) {
          const here = forces.filter((_, f) => touches(cellOf(places, f, 10, columns), c));
          if (here.length === 0) expect(found[c]).toBeNaN();
          else {
            expect(Math.abs(found[c])).toBe(Math.max(...here.map(Math.abs)));
            expect(here).toContain(found[c]);
          }
        }
      }),
    );
  });

  test('the least margin in each column over all subjects, against trying every sample on every column', () => {
    const margin = fc.oneof(fc.constant(nowhere), fc.double({ min: -1, max: 3, noNaN: true }));
    fc.assert(
      fc.property(
        fc.array(travel, { minLength: 1, maxLength: 4 }),
        fc.infiniteStream(margin),
        view,
        (paths, stream, columns) => {
          const frames = Math.min(...paths.map((path) => path.length));
          const subjects = paths.length;
          const places = paths.map((path) => path.slice(0, frames));
          const margins = Float64Array.from({ length: frames * subjects }, () => stream.next().value);
          const { margin: least, sample } = leastMargins(
            margins,
            subjects,
            (subject) => Float64Array.from(places[subject]),
            10,
            columns,
          );
          for (let c = 0; c < columns.count; c++) {
            const here: number[] = [];
            for (let f = 0; f < frames; f++) {
              for (let k = 0; k < subjects; k++) {
                const value = margins[f * subjects + k];
                if (!Number.isNaN(value) && touches(cellOf(places[k], f, 10, columns), c)) here.push(value);
              }
            }
            if (here.length === 0) {
              expect(least[c]).toBeNaN();
              expect(sample[c]).toBe(-1);
            } else {
              expect(least[c]).toBe(Math.min(...here));
              expect(margins[sample[c]]).toBe(least[c]);
            }
          }
        },
      ),
    );
  });

  test('a peak of one frame among ten thousand in one column is seen', () => {
    const places = Float64Array.from({ length: 10_000 }, (_, f) => f / 10_000);
    const forces = new Float64Array(10_000);
    forces[4321] = -0.55;
    expect([...strongestForces(places, 1, forces, { from: 0, perUnit: 2, count: 2 })]).toEqual([-0.55, 0]);
  });

  test('one frame spread over many columns leaves no gap', () => {
    const forces = strongestForces(Float64Array.of(0, 1, 2), 5, Float64Array.of(1, 2, 3), {
      from: 0,
      perUnit: 10,
      count: 20,
    });
    // Halfway between neighbours the stronger of the two begins.
    expect([...forces]).toEqual([...Array(5).fill(1), ...Array(10).fill(2), ...Array(5).fill(3)]);
  });

  test('a spot that moves to the other end of the vehicle is not travel', () => {
    const touched: number[][] = [];
    sweep(Float64Array.of(0, 0.1, 5, 5.1), 0.5, { from: 0, perUnit: 10, count: 60 }, (frame, first, last) => {
      touched.push([frame, first, last]);
    });
    expect(touched).toEqual([
      [0, 0, 0],
      [1, 0, 0],
      [2, 50, 50],
      [3, 50, 50],
    ]);
  });

  test('frames without a place are left out and do not pull their neighbours', () => {
    const touched: number[][] = [];
    sweep(Float64Array.of(0.05, nowhere, 0.95), 5, { from: 0, perUnit: 10, count: 10 }, (frame, first, last) => {
      touched.push([frame, first, last]);
    });
    expect(touched).toEqual([
      [0, 0, 0],
      [2, 9, 9],
    ]);
  });

  test('a standing train shows in one column, slack only if it never bore anything', () => {
    const still = new Float64Array(50).fill(0.35);
    const columns = { from: 0, perUnit: 10, count: 6 };
    const slack = [...strongestForces(still, 1, new Float64Array(50), columns)];
    expect(slack).toEqual([nowhere, nowhere, nowhere, 0, nowhere, nowhere]);
    const once = new Float64Array(50);
    once[20] = 0.01;
    expect(strongestForces(still, 1, once, columns)[3]).toBe(0.01);
  });
});

describe('stretches', () => {
  test('neighbouring columns go together', () => {
    const below = [1, -1, -2, 3, -1];
    expect(stretchesOf(5, (c) => below[c] < 0)).toEqual([
      { first: 1, last: 2 },
      { first: 4, last: 4 },
    ]);
  });

  test('a failing column is at least six wide, on the row, and joined with what it touches', () => {
    expect(widenStretches([{ first: 50, last: 50 }], 6, 100)).toEqual([{ first: 48, last: 53 }]);
    expect(widenStretches([{ first: 0, last: 0 }], 6, 100)).toEqual([{ first: 0, last: 5 }]);
    expect(widenStretches([{ first: 99, last: 99 }], 6, 100)).toEqual([{ first: 94, last: 99 }]);
    expect(widenStretches([{ first: 10, last: 30 }], 6, 100)).toEqual([{ first: 10, last: 30 }]);
    const joined = widenStretches(
      [
        { first: 50, last: 50 },
        { first: 55, last: 55 },
      ],
      6,
      100,
    );
    expect(joined).toEqual([{ first: 48, last: 58 }]);
  });

  test('widening keeps every failing column, and every stretch wide enough', () => {
    const row = fc.array(fc.boolean(), { minLength: 6, maxLength: 60 });
    fc.assert(
      fc.property(row, (fails) => {
        const wide = widenStretches(
          stretchesOf(fails.length, (c) => fails[c]),
          6,
          fails.length,
        );
        for (const [c, failing] of fails.entries()) {
          if (failing) expect(wide.some(({ first, last }) => first <= c && c <= last)).toBe(true);
        }
        for (const [k, { first, last }] of wide.entries()) {
          expect(last - first + 1).toBeGreaterThanOrEqual(6);
          expect(first).toBeGreaterThanOrEqual(0);
          expect(last).toBeLessThan(fails.length);
          if (k > 0) expect(first).toBeGreaterThan(wide[k - 1].last + 1);
        }
      }),
    );
  });
});
