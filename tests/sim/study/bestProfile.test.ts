import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  clearancesOf,
  firstStands,
  nodesOf,
  type ProfileProblem,
  type ProfileTask,
  profileProblem,
} from '../../../src/core/study/profile/index.ts';
import { helix, makeTrack, rulingGrade, straight, trackPoint } from '../../../src/core/track/index.ts';
import type { PlanElement, Track } from '../../../src/core/track/types.ts';
import { type BestProfile, bestProfile } from '../../../src/sim/study/bestProfile.ts';
import { loadSolver, type Solver } from '../../../src/sim/survey/solver.ts';

/** HO rule 32/R(in) per cent as a length: 0.32·25.4 mm. */
const curveLength = 0.008128;
const setting = { place: 1e-3, height: 1e-4 };

const planOf = (elements: readonly PlanElement[], rise = 0): Track => {
  const bare = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements,
    profile: { points: [{ chainage: 0, height: 0 }] },
  });
  const points = [
    { chainage: 0, height: 0 },
    { chainage: bare.length, height: rise },
  ];
  return makeTrack({ ...bare.spec, profile: { points } });
};

const taskOf = (track: Track, rise: number, more: Partial<ProfileTask> = {}): ProfileTask => ({
  track,
  heights: [
    { chainage: 0, height: 0 },
    { chainage: track.length, height: rise },
  ],
  grades: [
    { chainage: 0, grade: 0 },
    { chainage: track.length, grade: 0 },
  ],
  clearances: [],
  verticalRadius: 10,
  steepest: 0.1,
  towards: 'end',
  curveLength,
  window: 0,
  every: 0.05,
  ...more,
});

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

function best(task: ProfileTask): Extract<BestProfile, { kind: 'best' }> {
  const found = bestProfile(solver, task, setting);
  if (found.kind !== 'best') throw new Error(`impossible: ${found.inTheWay.join()}`);
  return found;
}

describe('bestProfile', () => {
  it('comes to the grade worked out by hand for a straight, a turn of helix and a straight', () => {
    // Grade G on the straights, G - c/R on the turn, ramps of radius Q at both ends of the track and on the straights before and after the turn
    // (on the turn itself the lesser grade must hold from end to end): areas under the grade give
    //   G·L - (c/R)·2πR - Q·G² - Q·(c/R)² = H.
    const [R, Q, H] = [0.6, 10, 0.1];
    const track = planOf([straight(2), helix(R, 1), straight(2)]);
    const eased = curveLength / R;
    const asked = H + eased * 2 * Math.PI * R + Q * eased * eased;
    const G = (track.length - Math.sqrt(track.length * track.length - 4 * Q * asked)) / (2 * Q);
    const coarse = best(taskOf(track, H));
    const fine = best(taskOf(track, H, { every: 0.0125 }));
    expect(coarse.proven && fine.proven).toBe(true);
    // Nodes only ever cost: the ramps cannot end between them. No profile at all is better than the floor.
    expect(coarse.floor).toBeLessThanOrEqual(G);
    expect(fine.floor).toBeLessThanOrEqual(G);
    expect(fine.least).toBeGreaterThanOrEqual(G - 1e-9);
    expect(coarse.least).toBeGreaterThanOrEqual(fine.least - 1e-9);
    expect(coarse.least - G).toBeLessThan(2e-5);
    expect(fine.least - G).toBeLessThan(1e-6);
    expect(coarse.least - coarse.floor).toBeLessThan(2e-4);
    // The track laid of its points says the same as the problem did.
    expect(coarse.exact.ruling).toBeCloseTo(coarse.least, 6);
    expect(coarse.exact.heightMissed).toBeLessThan(1e-9);
    expect(coarse.exact.verticalRadius).toBeGreaterThan(Q * (1 - 1e-6));
    // Rounded to 1 mm and 0.1 mm it still keeps everything and loses less than a hundredth of a per cent.
    expect(coarse.kept).toBe(true);
    expect(coarse.rounded.ruling - coarse.exact.ruling).toBeLessThan(1e-4);
    expect(coarse.rounded.points.every(({ height }) => Math.abs(height * 1e4 - Math.round(height * 1e4)) < 1e-9)).toBe(
      true,
    );
  }, 60_000);

  it('has the least that a search through all grades on a fine grid finds, and no more', () => {
    const track = planOf([straight(0.5), helix(0.6, 0.5 / (2 * Math.PI * 0.6))]);
    const [every, rise, bend] = [0.25, 0.012, 1 / 20];
    const task = taskOf(track, rise, { verticalRadius: 20, every, grades: [{ chainage: 0, grade: 0.004 }] });
    const found = best(task);
    const grid = 0.0002;
    const change = bend * every + 1e-12;
    let least = Number.POSITIVE_INFINITY;
    const c = curveLength / 0.6;
    // The rise is the trapezoid of five grades; the first is given, the last follows.
    for (let a = -0.01; a <= 0.04; a += grid) {
      if (Math.abs(a - 0.004) > change) continue;
      for (let b = -0.01; b <= 0.04; b += grid) {
        if (Math.abs(b - a) > change) continue;
        for (let d = -0.01; d <= 0.04; d += grid) {
          const e = (2 * rise) / every - 0.004 - 2 * (a + b + d);
          if (Math.abs(d - b) > change || Math.abs(e - d) > change) continue;
          least = Math.min(least, Math.max(0.004, a, b + c, d + c, e + c));
        }
      }
    }
    expect(found.least).toBeLessThanOrEqual(least + 1e-9);
    expect(least - found.least).toBeLessThan(2 * grid);
  });

  it('is optimal by a bound of its own: prices of the rows bound every solution from below', () => {
    const task = taskOf(planOf([straight(1), helix(0.6, 0.5), straight(1)]), 0.04, { every: 0.1 });
    const nodes = nodesOf(task);
    const problem = profileProblem(task, nodes, firstStands(task, nodes));
    const answer = solver(problem);
    if (answer.status !== 'optimal') throw new Error(answer.status);
    expect(priceBound(problem)).toBeCloseTo(answer.value, 5);
    for (const { terms, most } of problem.rows) {
      expect(terms.reduce((sum, [v, k]) => sum + k * answer.values[v], 0)).toBeLessThan(most + 1e-6);
    }
  });

  it('holds down the mean over the train wherever it stands, not only at nodes', () => {
    const track = planOf([straight(1.5), helix(0.6, 0.75), straight(1.5)]);
    const task = taskOf(track, 0.07, { window: 0.83, every: 0.1, steepest: 0.03 });
    const found = best(task);
    const { start, elements } = track.spec;
    const laid = makeTrack({ start, elements, profile: { points: found.exact.points } });
    const { grade } = rulingGrade(laid, { window: 0.83, towards: 'end', curveLength });
    expect(grade).toBeLessThan(found.least + 1e-6);
    expect(grade).toBeGreaterThan(found.least - 1e-5);
    expect(found.floor).toBeLessThanOrEqual(found.least);
    // A mean can always be as low as the greatest value at single places.
    expect(found.least).toBeLessThanOrEqual(best({ ...task, window: 0 }).least + 1e-9);
  }, 60_000);

  it('keeps two turns of a helix apart and pays for it where a lesser clearance would not', () => {
    const track = planOf([straight(1), helix(0.5, 2), straight(1)], 0.16);
    const clear = (least: number) => clearancesOf(track, { least, within: 0.05, others: [] });
    // All of the first turn lies under the second, looked at every 25 mm.
    expect(clear(0.06).length).toBeGreaterThan(100);
    const turns = clear(0.06).map(({ above, below }) => ((above ?? 0) - (below ?? 0)) / Math.PI);
    expect(turns.every((count) => Math.abs(count - Math.round(count)) < 0.04 && count > 0.9)).toBe(true);
    const [none, some] = [best(taskOf(track, 0.16)), best(taskOf(track, 0.16, { clearances: clear(0.066) }))];
    expect(none.exact.clearanceSpare).toBe(Number.POSITIVE_INFINITY);
    expect(some.exact.clearanceSpare).toBeGreaterThan(-1e-6);
    expect(some.least).toBeGreaterThan(none.least + 1e-4);
    // 66 mm in one turn is a grade of 2.1 % in the mean, and the curve's worth above it.
    expect(some.least).toBeGreaterThan(0.066 / Math.PI - 1e-3 + curveLength / 0.5);
  }, 60_000);

  it('keeps clear of another track below that stays', () => {
    const track = planOf([straight(3)], 0.05);
    const across = makeTrack({
      start: { x: 1, y: -1, heading: Math.PI / 2 },
      elements: [straight(2)],
      profile: { points: [{ chainage: 0, height: -0.02 }] },
    });
    const clearances = clearancesOf(track, { least: 0.05, within: 0.05, others: [across] });
    expect(clearances.length).toBeGreaterThan(1);
    const found = best(taskOf(track, 0.05, { clearances, grades: [] }));
    const laid = makeTrack({ ...track.spec, profile: { points: found.exact.points } });
    expect(trackPoint(laid, 1).z).toBeGreaterThan(0.03 - 1e-6);
  });

  it('says what stands in the way', () => {
    const track = planOf([straight(2)]);
    expect(bestProfile(solver, taskOf(track, 0.1, { steepest: 0.04 }), setting)).toEqual({
      kind: 'impossible',
      inTheWay: ['steepest'],
    });
    const stiff = bestProfile(solver, taskOf(track, 0.1, { verticalRadius: 40 }), setting);
    expect(stiff).toMatchObject({ kind: 'impossible', inTheWay: ['vertical-radius', 'grades'] });
    expect(() => bestProfile(solver, taskOf(track, 0.1, { every: 0 }), setting)).toThrow(RangeError);
  });
});

/**
 * A lower bound of a problem by weak duality, summed up here and not by the solver: for prices y ≥ 0 of the rows every solution costs at least
 * -Σ y·most + Σ min over the bounds of (c + Aᵀy)·x. The prices come from the dual problem, solved as a problem of its own.
 */
function priceBound({ variables, objective, rows }: ProfileProblem): number {
  const cost = new Float64Array(variables.length);
  for (const [variable, coefficient] of objective) cost[variable] += coefficient;
  // Variables of the dual: a price of every row, and of every variable's lower and upper bound.
  const n = variables.length;
  const m = rows.length;
  const free = { least: 0, most: 1e9, whole: false };
  const prices = Array.from({ length: m + 2 * n }, (_, k) => ({ name: `y${k}`, ...free }));
  const columns: [number, number][][] = Array.from({ length: n }, (_, v) => [
    [m + v, -1],
    [m + n + v, 1],
  ]);
  rows.forEach(({ terms }, r) => {
    for (const [v, k] of terms) columns[v].push([r, k]);
  });
  const ties = columns.flatMap((terms, v) => [
    { terms, most: -cost[v] },
    { terms: terms.map(([p, k]): [number, number] => [p, -k]), most: cost[v] },
  ]);
  const dual = solver({
    variables: prices,
    objective: [
      ...rows.map(({ most }, r): [number, number] => [r, most]),
      ...variables.map(({ least }, v): [number, number] => [m + v, -least]),
      ...variables.map(({ most }, v): [number, number] => [m + n + v, most]),
    ],
    rows: ties,
  });
  if (dual.status !== 'optimal') throw new Error(dual.status);
  const y = dual.values.map((price) => Math.max(0, price));
  let bound = 0;
  const reduced = Float64Array.from(cost);
  rows.forEach(({ terms, most }, r) => {
    bound -= y[r] * most;
    for (const [v, k] of terms) reduced[v] += k * y[r];
  });
  variables.forEach(({ least, most }, v) => {
    // Rounding of the solver, times bounds that are there only to be finite, is no price.
    if (Math.abs(reduced[v]) > 1e-9) bound += reduced[v] > 0 ? reduced[v] * least : reduced[v] * most;
  });
  return bound;
}

describe('any profile task', () => {
  const plan = planOf([straight(1), helix(0.6, 0.5), straight(1)]);

  it('is no easier with a tighter limit, and the same lifted as a whole or climbed from the other end', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 60 }), fc.integer({ min: 0, max: 500 }), (riseMm, liftMm) => {
        const rise = riseMm / 1e3;
        const task = taskOf(plan, rise, { every: 0.1, towards: 'both' });
        const { least } = best(task);
        const lift = liftMm / 1e3;
        const lifted = task.heights.map((one) => ({ ...one, height: one.height + lift }));
        expect(best({ ...task, heights: lifted }).least).toBeCloseTo(least, 8);
        // The plan reads the same from both ends.
        const fallen = task.heights.map((one) => ({ ...one, height: rise - one.height }));
        expect(best({ ...task, heights: fallen }).least).toBeCloseTo(least, 8);
        expect(best({ ...task, verticalRadius: 12 }).least).toBeGreaterThanOrEqual(least - 1e-9);
      }),
      { numRuns: 5 },
    );
    // Anchored: nothing to climb leaves the turn alone, 8.128 mm over 600 mm; climbs both ways counted, to dip in it gains nothing.
    expect(best(taskOf(plan, 0, { every: 0.1, towards: 'both' })).least).toBeCloseTo(curveLength / 0.6, 8);
  });

  it('says which limit a coarse rounding misses, where and by how much', () => {
    // In whole 200 mm, and in the 20 mm of the finest way tried, no height meets an end at 50 mm: at least 10 mm are missed there.
    const found = bestProfile(solver, taskOf(plan, 0.05), { place: 1e-3, height: 0.2 });
    if (found.kind !== 'best') throw new Error('impossible');
    expect(found.kept).toBe(false);
    const height = found.misses.find(({ limit }) => limit === 'heights');
    expect(height?.at).toBeCloseTo(plan.length, 9);
    expect(height?.found).toBeGreaterThanOrEqual(0.01 - 1e-9);
  });
});
