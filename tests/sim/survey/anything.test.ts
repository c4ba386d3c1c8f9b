import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  type Adjuster,
  describeMend,
  describeSurvey,
  type Objective,
  type Reading,
  usualLimits,
  workSurvey,
} from '../../../src/core/survey/index.ts';
import { mend } from '../../../src/sim/survey/index.ts';
import { caliper, gradeAt, heightAt, level, line, ramp, surveyOf } from '../../core/survey/spiral.ts';
import { evenly } from '../../evenly.ts';

const few = [0, 0.4, 0.8, 1.2, 1.6, 2.0];

const support = fc.integer({ min: 0, max: 5 });
const off = evenly(-0.02, 0.02);

const anyReading: fc.Arbitrary<Reading> = fc.oneof(
  fc
    .record({
      s: fc.double({ min: 0.2, max: 1.8, noNaN: true }),
      e: off,
      face: fc.constantFrom(1 as const, -1 as const),
    })
    .map(({ s, e, face }): Reading => gradeAt(s, 0.022 + e, { face })),
  fc
    .record({ i: support, e: off, of: fc.constantFrom(null, 'A', 'B') })
    .map(({ i, e, of }): Reading => heightAt(i, few[i] * 0.022 + e, of)),
  fc.record({ i: support, j: support, e: off }).map(
    ({ i, j, e }): Reading => ({
      kind: 'rise',
      name: `rise ${i} ${j}`,
      instrument: caliper.id,
      from: { support: i },
      to: { support: j },
      rise: (few[j] - few[i]) * 0.022 + e,
      board: 0,
    }),
  ),
  fc.record({ i: fc.integer({ min: 1, max: 4 }), e: off }).map(
    ({ i, e }): Reading => ({
      kind: 'gap',
      name: `gap ${i}`,
      instrument: line.id,
      at: { support: i },
      base: 0.5,
      gap: e / 10,
    }),
  ),
);

/** Every support read once and every span, on a line of which some supports are off by up to 6 mm. */
const readingsOfLine: fc.Arbitrary<Reading[]> = fc
  .array(fc.oneof(fc.constant(0), evenly(-0.006, 0.006)), { minLength: 6, maxLength: 6 })
  .map((truth) => {
    const height = (i: number): number => few[i] * 0.022 + truth[i];
    return [
      ...few.map((_, i): Reading => heightAt(i, height(i))),
      ...few.slice(1).map(
        (_, i): Reading => ({
          kind: 'rise',
          name: `rise ${i + 1}`,
          instrument: caliper.id,
          from: { support: i },
          to: { support: i + 1 },
          rise: height(i + 1) - height(i),
          board: 0,
        }),
      ),
    ];
  });

const adjusters: readonly Adjuster[] = [
  { kind: 'nut', thread: 'M6', pitch: 0.001 },
  { kind: 'packing', thicknesses: [0.0005, 0.001], most: 3 },
];

it('whatever the readings, there is an answer, in finite numbers and in words; what is called kept is kept', async () => {
  const outcomes = new Set<string>();
  await fc.assert(
    fc.asyncProperty(
      fc.oneof(fc.array(anyReading, { minLength: 1, maxLength: 25 }), readingsOfLine),
      fc.constantFrom<Objective>('fewest', 'flattest', 'least'),
      fc.constantFrom(...adjusters),
      fc.subarray([0, 1, 2, 3, 4, 5], { maxLength: 2 }),
      async (readings, objective, adjuster, some) => {
        const input = surveyOf(readings, {
          track: ramp(2),
          supports: few,
          instruments: [level, line, caliper],
          fixed: some.slice(0, 1),
        });
        const survey = workSurvey(input);
        expect(
          [...survey.explanation.departures, ...survey.belief.mean, survey.estimate.chiSquare].every(Number.isFinite),
        ).toBe(true);
        expect(
          survey.estimate.supports.every(({ departure, deviation }) => Number.isFinite(departure) && deviation >= 0),
        ).toBe(true);
        const task = { objective, limits: usualLimits(input), adjuster, locked: some.slice(1), pairs: [] };
        const done = await mend(survey, task);
        outcomes.add(done.outcome === 'mended' ? `${done.outcome} ${done.others}` : done.outcome);
        if (done.outcome === 'mended') {
          expect(done.after.every(({ holds }) => holds)).toBe(true);
          expect(done.proof.optimal).toBe(true);
          expect(done.steps.some(({ support: touched }) => some.includes(touched))).toBe(false);
        }
        const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;
        const words = JSON.stringify([describeSurvey(survey, show), describeMend(done, task, show)]);
        expect(words).not.toMatch(/NaN|undefined|Infinity/);
      },
    ),
    { numRuns: 80 },
  );
  // The ways it can end have come up, or the property would say less than it seems to.
  expect([...outcomes]).toEqual(expect.arrayContaining(['impossible', 'mended false', 'nothing-to-mend']));
});

it('one reading alone is an answer too: nothing is shown by it', async () => {
  const input = surveyOf([heightAt(2, 0.0176 + 0.0003)], { track: ramp(2), supports: few });
  const survey = workSurvey(input);
  expect(survey.explanation.noiseExplains).toBe(true);
  expect(survey.estimate.deficiencies[0]).toEqual({ kind: 'unseen', supports: [0, 1, 3, 4, 5] });
});

it('a survey without readings, or with nothing left to chance, is refused in words', () => {
  expect(() => workSurvey(surveyOf([]))).toThrow('The survey holds no reading along the track');
  expect(() => workSurvey(surveyOf([heightAt(1, 0)], { setting: 0 }))).toThrow(/must be more than nothing/);
});
