import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Adjuster, limitSet, lineShape, type MendTask } from '../../../src/core/survey/index.ts';
import { type Optimum, optimise } from '../../../src/sim/survey/optimise.ts';
import { loadSolver, type Solver } from '../../../src/sim/survey/solver.ts';
import { ramp, surveyOf } from '../../core/survey/spiral.ts';

/** A plane Σ row·x = bound, or the half space below it. */
interface Plane {
  readonly row: readonly number[];
  readonly bound: number;
}

/** Where as many planes meet as there are numbers, by Cramer's rule; null where they do not meet in one point. */
function meeting(planes: readonly Plane[]): number[] | null {
  const rows = planes.map(({ row }) => row);
  const whole = determinant(rows);
  if (Math.abs(whole) < 1e-9) return null;
  return rows.map((_, k) => {
    const replaced = rows.map((row, i) => row.map((value, j) => (j === k ? planes[i].bound : value)));
    return determinant(replaced) / whole;
  });
}

function determinant(rows: readonly (readonly number[])[]): number {
  if (rows.length === 0) return 1;
  return rows[0].reduce((sum, value, k) => {
    const smaller = rows.slice(1).map((row) => row.filter((_, j) => j !== k));
    return sum + (k % 2 === 0 ? 1 : -1) * value * determinant(smaller);
  }, 0);
}

const choices = <T>(items: readonly T[], count: number): T[][] =>
  count === 0
    ? [[]]
    : items.flatMap((item, k) => choices(items.slice(k + 1), count - 1).map((rest) => [item, ...rest]));

/**
 * The least of a convex function that is linear between some planes, over what all limits leave: it is taken where as many planes or limits meet as there are numbers.
 * Infinity where nothing is left.
 */
function leastAtMeetings(
  limits: readonly Plane[],
  creases: readonly Plane[],
  cost: (x: readonly number[]) => number,
): number {
  const numbers = limits[0].row.length;
  let least = Number.POSITIVE_INFINITY;
  for (const planes of choices([...limits, ...creases], numbers)) {
    const x = meeting(planes);
    if (x === null) continue;
    const keeps = limits.every(({ row, bound }) => row.reduce((sum, a, k) => sum + a * x[k], 0) <= bound + 1e-9);
    if (keeps) least = Math.min(least, cost(x));
  }
  return least;
}

const axis = (numbers: number, k: number, sign = 1): number[] =>
  Array.from({ length: numbers }, (_, j) => (j === k ? sign : 0));

const solver: Solver = await loadSolver();

describe('the solver', () => {
  const row = fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 3, maxLength: 3 });
  const drawn = fc.record({
    rows: fc.array(fc.record({ row, bound: fc.integer({ min: -6, max: 12 }) }), { minLength: 1, maxLength: 5 }),
    objective: row,
  });
  const top = 4;
  const asked = ({ rows, objective }: { rows: readonly Plane[]; objective: readonly number[] }, whole: boolean) =>
    solver({
      variables: ['a', 'b', 'c'].map((name) => ({ name, least: 0, most: top, whole })),
      objective: objective.map((value, k) => [k, value] as const),
      rows: rows.map((one) => ({ terms: one.row.map((value, k) => [k, value] as const), most: one.bound })),
    });
  const cost = (objective: readonly number[], x: readonly number[]): number =>
    objective.reduce((sum, value, k) => sum + value * x[k], 0);

  it('finds the least of any linear problem that its corners have', () => {
    fc.assert(
      fc.property(drawn, (task) => {
        const box = [0, 1, 2].flatMap((k) => [
          { row: axis(3, k), bound: top },
          { row: axis(3, k, -1), bound: 0 },
        ]);
        const least = leastAtMeetings([...box, ...task.rows], [], (x) => cost(task.objective, x));
        const answer = asked(task, false);
        if (least === Number.POSITIVE_INFINITY) expect(answer.status).toBe('infeasible');
        else {
          if (answer.status !== 'optimal') throw new Error(answer.status);
          expect(answer.value).toBeCloseTo(least, 6);
          expect(answer.bound).toBe(answer.value);
          expect(cost(task.objective, [...answer.values])).toBeCloseTo(least, 6);
        }
      }),
    );
  });

  it('finds the least in whole numbers that trying all of them finds', () => {
    fc.assert(
      fc.property(drawn, (task) => {
        let least = Number.POSITIVE_INFINITY;
        for (let code = 0; code < 125; code++) {
          const x = [code % 5, Math.floor(code / 5) % 5, Math.floor(code / 25)];
          if (task.rows.every((one) => cost(one.row, x) <= one.bound)) least = Math.min(least, cost(task.objective, x));
        }
        const answer = asked(task, true);
        if (least === Number.POSITIVE_INFINITY) expect(answer.status).toBe('infeasible');
        else {
          if (answer.status !== 'optimal') throw new Error(answer.status);
          expect(answer.value).toBeCloseTo(least, 6);
          for (const value of answer.values) expect(Math.abs(value - Math.round(value))).toBeLessThan(1e-6);
        }
      }),
    );
  });

  it('answers for no numbers at all by whether the rows hold', () => {
    const empty = (most: number) => solver({ variables: [], objective: [], rows: [{ terms: [], most }] }).status;
    expect(empty(0)).toBe('optimal');
    expect(empty(-1e-3)).toBe('infeasible');
  });
});

describe('mending of a level line on five supports, against trying everything', () => {
  const apart = 0.4;
  const five = [0, 1, 2, 3, 4].map((k) => k * apart);
  const kink = 0.004;
  /** mm; the ends are datum. */
  const offs = fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 3, maxLength: 3 }).map((inner) => {
    const all = [0, ...inner.map((tenths) => tenths / 10), 0];
    return Float64Array.from(all, (mm) => mm / 1000);
  });

  function mended(task: MendTask, departures: Float64Array, touchable: readonly number[]): Optimum | null {
    const shape = lineShape(surveyOf([], { track: ramp(1.6), supports: five }));
    const set = limitSet(shape, task.limits, []);
    const outcome = optimise(solver, { set, subject: { shape, task, departures, touchable }, room: null });
    return outcome.kind === 'optimum' ? outcome.optimum : null;
  }

  /** What changes (mm) of the supports in the middle must keep: changes of grade at each, per mm apart, and their own bounds. */
  function limitsOn(departures: Float64Array, most: number): Plane[] {
    const mm = apart * 1000;
    // Change of grade at a support: what the next stands higher, less what it stands higher than the last, over the distance.
    const bends = [1, 2, 3].map((at) => {
      const row = [1, 2, 3].map((k) => (k === at ? -2 : Math.abs(k - at) === 1 ? 1 : 0) / mm);
      const now = ((departures[at + 1] - 2 * departures[at] + departures[at - 1]) * 1000) / mm;
      return { row, now };
    });
    return [
      ...bends.flatMap(({ row, now }) => [
        { row, bound: kink - now },
        { row: row.map((value) => -value), bound: kink + now },
      ]),
      ...[0, 1, 2].flatMap((k) => [
        { row: axis(3, k), bound: most },
        { row: axis(3, k, -1), bound: most },
      ]),
    ];
  }

  const nut: Adjuster = { kind: 'nut', thread: 'M8', pitch: 0.00125 };
  const limits = { greatestKink: kink, largestRise: 0.002, largestDrop: 0.002 };
  const work = (x: readonly number[]): number => x.reduce((sum, value) => sum + Math.abs(value), 0);

  it('turns nuts no further than need be', () => {
    let [could, touched] = [0, 0];
    fc.assert(
      fc.property(offs, (departures) => {
        const creases = [0, 1, 2].map((k) => ({ row: axis(3, k), bound: 0 }));
        const least = leastAtMeetings(limitsOn(departures, 2), creases, work);
        const task: MendTask = { objective: 'least', limits, adjuster: nut, locked: [0, 4], pairs: [] };
        const found = mended(task, departures, [1, 2, 3]);
        expect(found === null).toBe(least === Number.POSITIVE_INFINITY);
        if (found === null) return;
        could++;
        if (least > 0) touched++;
        expect(found.proven).toBe(true);
        expect(found.value).toBeCloseTo(least, 5);
        expect(work([...found.changes]) * 1000).toBeCloseTo(least, 4);
      }),
      { numRuns: 50 },
    );
    // The cases drawn are of every sort.
    expect(could).toBeGreaterThan(10);
    expect(could).toBeLessThan(50);
    expect(touched).toBeGreaterThan(5);
  });

  it('turns as few nuts as every choice of them needs, and leaves as little as these can', () => {
    fc.assert(
      fc.property(offs, (departures) => {
        const off = [1, 2, 3].map((k) => departures[k] * 1000);
        // Creases where a support stands as planned.
        const creases = [0, 1, 2].map((k) => ({ row: axis(3, k), bound: -off[k] }));
        const remains = (x: readonly number[]): number => work(x.map((value, k) => value + off[k]));
        let fewest = { count: Number.POSITIVE_INFINITY, remain: Number.POSITIVE_INFINITY };
        for (let choice = 0; choice < 8; choice++) {
          const left = [0, 1, 2].filter((k) => ((choice >> k) & 1) === 0);
          const still = left.flatMap((k) => [
            { row: axis(3, k), bound: 0 },
            { row: axis(3, k, -1), bound: 0 },
          ]);
          const remain = leastAtMeetings([...limitsOn(departures, 2), ...still], creases, remains);
          const count = 3 - left.length;
          if (remain === Number.POSITIVE_INFINITY) continue;
          if (count < fewest.count || (count === fewest.count && remain < fewest.remain)) fewest = { count, remain };
        }
        const task: MendTask = { objective: 'fewest', limits, adjuster: nut, locked: [0, 4], pairs: [] };
        const found = mended(task, departures, [1, 2, 3]);
        expect(found === null).toBe(fewest.count === Number.POSITIVE_INFINITY);
        if (found === null) return;
        expect(found.value).toBeCloseTo(fewest.count, 5);
        expect([...found.changes].filter((change) => Math.abs(change) > 1e-7)).toHaveLength(fewest.count);
        expect(remains([1, 2, 3].map((k) => found.changes[k] * 1000))).toBeCloseTo(fewest.remain, 3);
      }),
      { numRuns: 30 },
    );
  });

  it('packs as few supports, with as little, as every sum of pieces at every support allows', () => {
    const adjuster: Adjuster = { kind: 'packing', thicknesses: [0.0005, 0.0012], most: 3 };
    // All sums of at most three pieces of 0.5 and 1.2 mm.
    const sums = [0, 0.5, 1, 1.2, 1.5, 1.7, 2.2, 2.4, 2.9, 3.6];
    fc.assert(
      fc.property(offs, (departures) => {
        const keep = limitsOn(departures, 10).slice(0, 6);
        let fewest = { count: Number.POSITIVE_INFINITY, total: Number.POSITIVE_INFINITY };
        for (const a of sums) {
          for (const b of sums) {
            for (const c of sums) {
              const x = [a, b, c];
              if (keep.some(({ row, bound }) => row.reduce((sum, value, k) => sum + value * x[k], 0) > bound + 1e-10))
                continue;
              const count = x.filter((value) => value > 0).length;
              const total = a + b + c;
              if (count < fewest.count || (count === fewest.count && total < fewest.total - 1e-9))
                fewest = { count, total };
            }
          }
        }
        const task: MendTask = {
          objective: 'fewest',
          limits: { greatestKink: kink },
          adjuster,
          locked: [0, 4],
          pairs: [],
        };
        const found = mended(task, departures, [1, 2, 3]);
        expect(found === null).toBe(fewest.count === Number.POSITIVE_INFINITY);
        if (found === null) return;
        expect(found.value).toBeCloseTo(fewest.count, 5);
        expect([...found.changes].reduce((sum, change) => sum + change, 0) * 1000).toBeCloseTo(fewest.total, 5);
      }),
      { numRuns: 30 },
    );
  });
});
