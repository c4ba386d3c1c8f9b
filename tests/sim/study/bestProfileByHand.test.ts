import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { clearancesOf, type ProfileTask } from '../../../src/core/study/profile/index.ts';
import { arc, makeTrack, straight, trackPoint, transition } from '../../../src/core/track/index.ts';
import { type BestProfile, bestProfile, leastProfile } from '../../../src/sim/study/bestProfile.ts';
import { loadSolver, type Solver } from '../../../src/sim/survey/solver.ts';
import { taskOn, trackOn } from '../../core/study/profile/samples.ts';

const setting = { place: 1e-3, height: 1e-4 };
const curveLength = 0.008;

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

function best(task: ProfileTask, set = setting): Extract<BestProfile, { kind: 'best' }> {
  const found = bestProfile(solver, task, set);
  if (found.kind !== 'best') throw new Error(`impossible: ${found.inTheWay.join()}`);
  return found;
}

/** To the left to a radius of 0.5 m, over to the right to as much, and out, 4 m in all: turned 0.4 + 0.8 + 0.5·(0.4 + 0.4) + 1.2 + 0.4 rad. */
const wavy = trackOn([
  straight(0.4),
  transition(0.4, 0, 2),
  arc(0.5, 0.8),
  transition(0.8, 2, -2),
  arc(0.5, -1.2),
  transition(0.4, -2, 0),
  straight(1),
]);
const turned = 0.4 + 0.8 + 0.8 + 1.2 + 0.4;
const ends = (rise: number) => [
  { chainage: 0, height: 0 },
  { chainage: 4, height: rise },
];

describe('the best profile of a line with easements', () => {
  // The curve is worth 8 mm/R more or less by 8 mm·2/0.4 m² = 0.04 1/m at most: vertical curves of 1/0.04 = 25 m follow it exactly, the compensated
  // grade is the same everywhere, and as the mean of grade + 8 mm·|curvature| over the line is (rise + 8 mm·turned)/length, it cannot be less.
  const task = (more: Partial<ProfileTask>) =>
    taskOn(wavy, { heights: ends(0.06), curveLength, verticalRadius: 20, every: 0.1, ...more });
  const even = (0.06 + curveLength * turned) / 4;

  it('eases the grade along the easements just as the curve grows', () => {
    expect(wavy.length).toBeCloseTo(4, 12);
    const found = best(task({}));
    expect(found.least).toBeCloseTo(even, 8);
    // The plainest of all as good may be 1e-5 % steeper.
    expect(found.exact.ruling).toBeLessThan(even + 1.1e-7);
    const laid = makeTrack({ ...wavy.spec, profile: { points: found.exact.points } });
    // Nowhere above by more than 1e-7, so nowhere below by more than a dent in which 4e-7 m are made up at 20 m radius: √(4e-7/20).
    for (const s of [0.2, 0.5, 0.7, 1, 1.3, 1.55, 1.7, 2.2, 2.8, 3.5]) {
      const { grade, curvature } = trackPoint(laid, s);
      expect(Math.abs(grade + curveLength * Math.abs(curvature) - even)).toBeLessThan(1.5e-4);
    }
  });

  it('gives the mean over a train the same, wherever it stands, where the line is a whole number of trains long', () => {
    // Trains end to end over the line: the mean of their means is that of the line.
    // Between the places where it is held down a mean may be 1.1e-5 % steeper.
    for (const trains of [4, 7]) {
      expect(Math.abs(best(task({ window: 4 / trains })).least - even)).toBeLessThan(1.2e-7);
    }
    // A train longer than the line is all of it.
    expect(best(task({ window: 9 })).least).toBeCloseTo(even, 8);
  });

  it('found in a hurry it is as good', () => {
    const points = leastProfile(solver, task({}));
    const laid = makeTrack({ ...wavy.spec, profile: { points: points ?? [] } });
    expect(trackPoint(laid, 4).z - trackPoint(laid, 0).z).toBeCloseTo(0.06, 9);
    for (let s = 0.05; s < 4; s += 0.1) {
      const { grade, curvature } = trackPoint(laid, s);
      expect(grade + curveLength * Math.abs(curvature)).toBeLessThan(even + 1e-6);
    }
    expect(leastProfile(solver, task({ steepest: 0.01 }))).toBeNull();
  });
});

describe('a best profile turned upside down', () => {
  const line = trackOn([straight(3)], [{ chainage: 0, height: 0 }]);
  const across = (x: number, height: number) =>
    trackOn([straight(2)], [{ chainage: 0, height }], { x, y: -1.003, heading: Math.PI / 2 });
  const task = (sign: 1 | -1, rise: number, over: number, under: number): ProfileTask =>
    taskOn(line, {
      heights: [
        { chainage: 0, height: 0 },
        { chainage: 3, height: sign * rise },
      ],
      // One track 1 m along lies below the line, one 2 m along above it.
      clearances: clearancesOf(line, {
        least: 0.05,
        within: 0.05,
        others: [across(1, -sign * over), across(2, sign * under)],
      }),
      towards: sign === 1 ? 'end' : 'start',
      every: 0.1,
    });

  it('is the same profile: what lay above lies below, what climbed falls', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 40 }),
        fc.integer({ min: 20, max: 48 }),
        fc.integer({ min: 70, max: 99 }),
        (rise, over, under) => {
          const [up, down] = ([1, -1] as const).map((sign) => best(task(sign, rise / 1e3, over / 1e3, under / 1e3)));
          expect(down!.least).toBeCloseTo(up!.least, 8);
          expect(down!.floor).toBeCloseTo(up!.floor, 7);
          expect(down!.exact.clearanceSpare).toBeGreaterThan(-1e-6);
          expect(up!.exact.clearanceSpare).toBeGreaterThan(-1e-6);
        },
      ),
      { numRuns: 5 },
    );
  });

  it('passes under a track that stays, low enough and no lower than it must', () => {
    // Rail top 35 mm up at 2 m or 1.95 m, asked for 50 mm: the line has to be 15 mm down there, and the end 30 mm up is then at least 45 mm in 1 m.
    const clearances = clearancesOf(line, { least: 0.05, within: 0.05, others: [across(2, 0.035)] });
    const found = best(taskOn(line, { heights: [{ chainage: 3, height: 0.03 }], clearances, every: 0.05 }));
    const laid = makeTrack({ ...line.spec, profile: { points: found.exact.points } });
    const reach = Math.max(...clearances.map(({ below }) => below ?? 0));
    expect(trackPoint(laid, reach).z).toBeLessThan(-0.015 + 1e-6);
    // With its height free at the start it is one even grade from there.
    expect(found.least).toBeCloseTo(0.045 / (3 - reach), 6);
  });
});
