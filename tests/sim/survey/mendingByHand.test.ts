import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Adjuster,
  checkLimits,
  extremeGrades,
  limitSet,
  lineShape,
  type MendTask,
} from '../../../src/core/survey/index.ts';
import { makeTrack, straight, type Track, trackPoint } from '../../../src/core/track/index.ts';
import type { GradePoint } from '../../../src/core/track/types.ts';
import { easings } from '../../../src/sim/survey/conflicts.ts';
import { climbOf, type MendWork, optimise } from '../../../src/sim/survey/optimise.ts';
import { loadSolver, type Solver } from '../../../src/sim/survey/solver.ts';
import { surveyOf } from '../../core/survey/spiral.ts';

const solver: Solver = await loadSolver();
const nut: Adjuster = { kind: 'nut', thread: 'M8', pitch: 0.00125 };
const five = [0, 0.4, 0.8, 1.2, 1.6];

const planOf = (points: readonly GradePoint[]): Track =>
  makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements: [straight(1.6)], profile: { points } });
/** A plan in straight grades through heights at its five supports, mm. */
const through = (heightsMm: readonly number[]): Track =>
  planOf(five.map((chainage, i) => ({ chainage, height: heightsMm[i]! / 1e3 })));
const shapeOf = (track: Track, strip: Parameters<typeof surveyOf>[1] = {}) =>
  lineShape(surveyOf([], { track, supports: five, ...strip }));

/** Work on that shape with every support but the ends free. */
function workOf(track: Track, task: Partial<MendTask>, offsMm: readonly number[]): MendWork {
  const shape = shapeOf(track);
  const whole: MendTask = { objective: 'flattest', limits: {}, adjuster: nut, locked: [], pairs: [], ...task };
  const departures = Float64Array.from(offsMm, (mm) => mm / 1e3);
  return {
    set: limitSet(shape, whole.limits, []),
    subject: { shape, task: whole, departures, touchable: [1, 2, 3] },
    room: null,
  };
}

describe('the way a plan climbs', () => {
  it.each([
    ['up', [0, 8, 16, 24, 32], 1],
    ['down', [32, 24, 16, 8, 0], -1],
    ['down at first, up in all', [0, -8, 0, 8, 16], 1],
    ['up at first, down in all', [0, 8, 16, 0, -8], -1],
    ['level', [5, 5, 5, 5, 5], 1],
  ] as const)('%s', (_name, heights, way) => {
    expect(climbOf(limitSet(shapeOf(through(heights)), {}, []))).toBe(way);
  });
});

describe('the flattest line of a plan that first goes the other way', () => {
  const flattest = (sign: 1 | -1) => {
    const limits = { largestRise: 0.02, largestDrop: 0.02 };
    const offs = [0, 1, -1, 1, 0].map((mm) => sign * mm);
    const work = workOf(through([0, -2, 0, 8, 16].map((mm) => sign * mm)), { limits }, offs);
    const outcome = optimise(solver, work);
    if (outcome.kind !== 'optimum') throw new Error(outcome.kind);
    const line = offs.map((mm, i) => mm / 1e3 + outcome.optimum.changes[i]!);
    const steepest = extremeGrades(work.set, line, sign).map(({ grade }) => sign * grade);
    return { ...outcome.optimum, steepest: Math.max(...steepest) };
  };

  it('is the same upside down, and nowhere steeper the way it climbs in all than it says', () => {
    const [up, down] = [flattest(1), flattest(-1)];
    expect(up.proven && down.proven).toBe(true);
    expect(down.value).toBeCloseTo(up.value, 6);
    // In per cent, kept to what counts as kept.
    for (const { steepest, value } of [up, down]) expect(Math.abs(steepest * 100 - value)).toBeLessThan(2e-5);
    // 16 mm in 1.6 m between its ends in the mean, so not less; as it stands the last stretches go up by 8 mm in 400 and more.
    expect(up.value).toBeGreaterThan(1);
    expect(up.value).toBeLessThan(2);
  });
});

describe('the flattest line with one support to set', () => {
  it('is nowhere steeper than it says, wherever within a stretch its steepest place lies', () => {
    const off = fc.integer({ min: -30, max: 30 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(fc.tuple(off, off, off, off, off), fc.constantFrom(1, -1), (offs, sign) => {
        const limits = { largestRise: 0.02, largestDrop: 0.02 };
        const whole = workOf(through([0, 8, 16, 24, 32].map((mm) => sign * mm)), { limits }, offs);
        const work = { ...whole, subject: { ...whole.subject, touchable: [2] } };
        const outcome = optimise(solver, work);
        if (outcome.kind !== 'optimum') throw new Error(outcome.kind);
        const line = offs.map((mm, i) => mm / 1e3 + outcome.optimum.changes[i]!);
        const steepest = extremeGrades(work.set, line, sign as 1 | -1).map(({ grade }) => sign * grade);
        expect(Math.abs(Math.max(...steepest) * 100 - outcome.optimum.value)).toBeLessThan(2e-5);
      }),
      { numRuns: 20 },
    );
  });
});

describe('an answer that the solver did not prove', () => {
  it('says so, with the value and the bound of the first objective', () => {
    const work = workOf(
      through([0, 8, 16, 24, 32]),
      { objective: 'fewest', limits: { greatestGrade: 0.024 } },
      [0, 3, 0, 0, 0],
    );
    let calls = 0;
    const hurried: Solver = (task) => {
      const answer = solver(task);
      calls++;
      // Stopped in the first of its objectives, a unit short of its proof.
      if (answer.status !== 'optimal' || calls > 1) return answer;
      return { status: 'stopped', values: answer.values, value: answer.value, bound: answer.value - 1 };
    };
    const [sure, unsure] = [optimise(solver, work), optimise(hurried, work)];
    if (sure.kind !== 'optimum' || unsure.kind !== 'optimum') throw new Error('infeasible');
    expect(sure.optimum.proven).toBe(true);
    expect(sure.optimum.bound).toBeCloseTo(sure.optimum.value, 6);
    expect(unsure.optimum.proven).toBe(false);
    expect(unsure.optimum.bound).toBeCloseTo(unsure.optimum.value - 1, 6);
  });

  it('is none where the solver has nothing to show', () => {
    const work = workOf(through([0, 8, 16, 24, 32]), { limits: { greatestGrade: 0.024 } }, [0, 3, 0, 0, 0]);
    expect(() => optimise(() => ({ status: 'unknown' }), work)).toThrow(/in time/);
  });
});

describe('what would have to give way', () => {
  it('are the limits in the way, by what they lack, and none that holds as it is', () => {
    // Ends 32 mm apart in 1.6 m: no less than 2 % in the mean. The kink, 0.4 % at most here, is in nobody's way.
    const limits = { greatestGrade: 0.018, greatestKink: 0.02, largestRise: 0.02, largestDrop: 0.02 };
    const { conflicts, together } = easings(solver, workOf(through([0, 8, 16, 24, 32]), { limits }, [0, 0, 0, 0, 0]));
    expect(together).toBe(false);
    expect(conflicts.map(({ limit }) => limit)).toEqual(['greatestGrade']);
    expect(conflicts[0]!.needed).toBeCloseTo(0.02, 6);
  });

  it('are two together where neither alone would do', () => {
    // Up 8 mm a support in the mean needs 2 %; and a support locked 6 mm high by its largest drop of 0 has a kink beside it.
    const shape = shapeOf(through([0, 8, 16, 24, 32]));
    const limits = { greatestGrade: 0.018, greatestKink: 0.02, largestRise: 0.02, largestDrop: 0.02 };
    const task: MendTask = { objective: 'least', limits, adjuster: nut, locked: [], pairs: [] };
    const work: MendWork = {
      set: limitSet(shape, limits, []),
      subject: { shape, task, departures: Float64Array.of(0, 0, 0.006, 0, 0), touchable: [] },
      room: null,
    };
    const { conflicts, together } = easings(solver, work);
    expect(together).toBe(true);
    const needed = Object.fromEntries(conflicts.map((one) => [one.limit, one.needed]));
    // 6 mm up and down again in 400 mm each.
    expect(needed.greatestKink).toBeCloseTo(0.03, 6);
    expect(needed.greatestGrade).toBeGreaterThan(0.035);
    expect(conflicts.map(({ limit }) => limit).sort()).toEqual(['greatestGrade', 'greatestKink']);
  });
});

describe('limits on a line, by hand', () => {
  it('of a change of grade count the plan’s own heights, whatever its curve between supports does', () => {
    // Level to 0.8 m, 3 % up from there: a kink of 3 % over the supports, vertical curve or none.
    for (const curve of [undefined, { length: 0.6 }]) {
      const plan = planOf([
        { chainage: 0, height: 0 },
        { chainage: 0.8, height: 0, ...(curve && { curve }) },
        { chainage: 1.6, height: 0.024 },
      ]);
      const [check] = checkLimits(limitSet(shapeOf(plan), { greatestKink: 0.05 }, []), [0, 0, 0, 0, 0]);
      // The curve lifts the support at its middle by an eighth of length times change of grade: 2.25 mm, felt on both sides of it.
      const lifted = curve === undefined ? 0 : (2 * 0.00225) / 0.4;
      expect(check!.value).toBeCloseTo(0.03 - lifted, 9);
      expect(check!.chainage).toBe(0.8);
    }
  });

  it('have the steepest and least steep place of a heavy strip where its bent line has them', () => {
    const sections = [{ from: 0, to: 1.6, stiffness: 0.5, weight: 8 }];
    const track = through([0, 8, 16, 24, 32]);
    const shape = shapeOf(track, { strip: { hinges: [], sections } });
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 5, maxLength: 5 }), (tenths) => {
        const offs = tenths.map((tenth) => tenth / 1e4);
        const bent = makeTrack({
          ...track.spec,
          profile: {
            points: track.spec.profile.points,
            strip: { hinges: [], sections, supports: five.map((chainage, i) => ({ chainage, departure: offs[i]! })) },
          },
        });
        for (const sign of [1, -1] as const) {
          for (const { stretch, chainage, grade } of extremeGrades(limitSet(shape, {}, []), offs, sign)) {
            // Slopes of height against plan chainage; just inside its ends, where plans of straight grades have a kink.
            const [from, to] = [stretch.from + 1e-9, stretch.to - 1e-9];
            const at = (s: number): number => trackPoint(bent, Math.min(Math.max(s, from), to)).grade;
            const seen = Array.from({ length: 201 }, (_, k) => sign * at(from + ((to - from) * k) / 200));
            expect(sign * grade).toBeGreaterThan(Math.max(...seen) - 1e-9);
            expect(at(chainage)).toBeCloseTo(grade, 6);
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});
