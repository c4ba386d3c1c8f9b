/* Over 300 lines for a reason: the document and the schema that describes it stand side by side, part by part. */
import { z } from 'zod';
import { railCentres } from '../../core/track/index.ts';
import type { LimitCheck, LimitPlace, Limits, Mend, Reading, SurveyResult } from '../../sim/survey/index.ts';

const number = (about: string) => z.number().meta({ description: about });
const supportNumber = z.int().meta({ description: 'Number of the support, counted from 1.' });
const limitName = z.enum([
  'greatestGrade',
  'leastGrade',
  'greatestKink',
  'leastRadius',
  'headroom',
  'largestRise',
  'largestDrop',
]);
const limitValue = number('Grades and changes of grade in per cent, everything else in mm.');

const check = z.strictObject({
  limit: limitName,
  value: limitValue,
  bound: limitValue,
  chainageMm: number('Where it is worst, mm.'),
  holds: z.boolean(),
});

const place = z.strictObject({ limit: limitName, chainageMm: number('Where, mm.') });

const mend = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('nothing-to-mend'),
    reason: z.enum(['noise', 'within-limits']),
    limits: z.array(check),
    probability: number('That the line as built keeps all limits.'),
  }),
  z.strictObject({
    outcome: z.literal('mended'),
    objective: z.enum(['fewest', 'flattest', 'least']),
    aroundWrongOnes: z.boolean().meta({ description: 'True when supports that are right are set to suit wrong ones.' }),
    steps: z
      .array(
        z.strictObject({
          support: supportNumber,
          changeMm: number('Up is positive, mm.'),
          turns: z.exactOptional(number('Of the nut, up is positive.')),
          pieces: z.exactOptional(z.array(z.strictObject({ thicknessMm: z.number(), count: z.int() }))),
          beforeMm: number('Height of the rail top before, mm.'),
          afterMm: number('And after, mm.'),
        }),
      )
      .meta({ description: 'In the order of work.' }),
    proven: z.boolean().meta({ description: 'No better answer exists.' }),
    value: number('Supports touched, mm of change in all, or greatest grade in per cent, as the objective is.'),
    bound: number('Less than this is ruled out; the same unit.'),
    limitsBefore: z.array(check),
    limitsAfter: z.array(check),
    probabilityBefore: number('That the line keeps all limits before the work.'),
    probabilityAfter: number('And after it.'),
  }),
  z.strictObject({
    outcome: z.literal('impossible'),
    conflicts: z
      .array(z.strictObject({ limit: limitName, bound: limitValue, needed: limitValue, chainageMm: z.number() }))
      .meta({ description: 'What each limit would have to become for the others to be kept, exactly.' }),
    together: z.boolean().meta({
      description: 'True when no limit can be eased enough alone, and all conflicts have to give way at once.',
    }),
    irreducible: z
      .array(place)
      .meta({ description: 'Cannot be kept together; with any of them left out the rest can.' }),
    unlock: z.array(supportNumber).meta({ description: 'Locked supports that would have to be touched.' }),
    limits: z.array(check),
  }),
]);

/** The document that `gradewright survey --json` writes. */
export const surveyReportSchema = z
  .strictObject({
    report: z.literal('gradewright-survey'),
    version: z.literal(1),
    scene: z.string(),
    track: z.string().meta({ description: 'Id of the track.' }),
    survey: z.string().nullable().meta({ description: 'Id of the survey; null for readings from a file.' }),
    verdict: z.enum(['nothing-to-mend', 'mended', 'impossible']),
    text: z.array(z.string()).meta({ description: 'The same in sentences.' }),
    noiseExplains: z.boolean().meta({ description: 'No support is shown to be off.' }),
    chiSquare: z.strictObject({
      before: number('Of the plan alone.'),
      after: number('Of the account given.'),
      degreesOfFreedom: z.int(),
      probability: number('Of a χ² at least as large when the stated errors are right.'),
    }),
    supports: z.array(
      z.strictObject({
        support: supportNumber,
        chainageMm: number('mm.'),
        plannedMm: number('Planned height of the rail top, mm.'),
        departureMm: number('Built less planned by the readings alone, mm.').nullable(),
        deviationMm: number('Its standard deviation, mm; null where the readings tell nothing.').nullable(),
        believedMm: number('Built less planned, with how closely supports are set, mm.'),
        detectableMm: number('Smallest departure shown four times in five, mm; null: none.').nullable(),
        wrong: z.boolean().meta({ description: 'Shown to be off.' }),
      }),
    ),
    covarianceMm2: z.array(z.array(z.number())).meta({ description: 'Of the departures by the readings alone, mm².' }),
    wrong: z.array(
      z.strictObject({
        support: supportNumber,
        departureMm: z.number(),
        deviationMm: z.number(),
        statistic: number('Departure over deviation.'),
        rival: z.exactOptional(z.string().meta({ description: 'A reading that would explain it as well.' })),
      }),
    ),
    slips: z.array(
      z.strictObject({
        kind: z.enum([
          'percent-for-degrees',
          'degrees-for-percent',
          'shifted',
          'spacers',
          'edge-radius',
          'board',
          'raised-from',
          'outlier',
        ]),
        at: z.enum(['readings', 'plan', 'line']),
        readings: z.array(z.string()).meta({ description: 'Names of the readings concerned.' }),
        support: z.exactOptional(supportNumber),
        statistic: number('By how much χ² falls when it is put right.'),
        critical: number('What would have done.'),
        amountMm: z.exactOptional(number('mm.')),
        amountPercent: z.exactOptional(number('Of a grade, per cent.')),
        supportsMoved: z.exactOptional(z.int()),
        text: z.string(),
      }),
    ),
    next: z
      .strictObject({
        kind: z.enum(['grade', 'height']),
        support: supportNumber,
        baseMm: z.exactOptional(z.number()),
        text: z.string(),
      })
      .nullable()
      .meta({ description: 'The one further reading that would tell most.' }),
    twist: z
      .strictObject({
        gaugeMm: z.number(),
        places: z.array(
          z.strictObject({
            support: z.exactOptional(supportNumber),
            chainageMm: number('mm.'),
            levelMm: number('Right rail over the left one, over the gauge, mm.'),
            plannedMm: number('The same by the plan, mm.'),
            departureMm: number('mm.'),
            deviationMm: number('Its standard deviation, mm.'),
            wrong: z.boolean().meta({ description: 'Shown to lie otherwise than planned.' }),
            believedMm: number('Departure with how closely decks are set and with the zero of the level, mm.'),
            believedDeviationMm: number('Its standard deviation, mm.'),
          }),
        ),
        believedCovarianceMm2: z
          .array(z.array(z.number()))
          .meta({ description: 'Of the believed departures across, mm²; trains run on lines drawn from it.' }),
        twists: z.array(
          z.strictObject({
            fromMm: number('Chainage, mm.'),
            toMm: number('Chainage, mm.'),
            twistMm: number('Change of cross-level between the two, mm.'),
            deviationMm: number('Its standard deviation, mm.'),
            limitMm: number('What a frame without bogies stands over that distance, mm.'),
            verdict: z.enum(['within', 'doubtful', 'past']),
          }),
        ),
        text: z.array(z.string()),
      })
      .nullable()
      .meta({ description: 'How the deck lies across; null without cross-levels.' }),
    mend,
  })
  .meta({ title: 'Result of a survey' });

export type SurveyReport = z.infer<typeof surveyReportSchema>;
export type SurveyReportMend = SurveyReport['mend'];

const mm = 1e3;

/** Per cent for grades, mm for the rest. */
const scaled = (limit: keyof Limits, value: number): number =>
  value * (limit === 'greatestGrade' || limit === 'leastGrade' || limit === 'greatestKink' ? 100 : mm);

/** A number that JSON can hold; null for one that is none. */
const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** A result and its sentences as the document. */
export function surveyReport(scene: string, result: SurveyResult, words: ReportWords): SurveyReport {
  const { survey, mend: done, trackId, surveyId } = result;
  const { explanation, estimate, belief, input, next } = survey;
  const count = input.supports.length;
  const wrong = explanation.departures;
  const row = (i: number): number[] =>
    Array.from(estimate.covariance.slice(i * count, (i + 1) * count), (v) => v * mm * mm);
  return {
    report: 'gradewright-survey',
    version: 1,
    scene,
    track: trackId,
    survey: surveyId,
    verdict: done.outcome,
    text: [...words.text],
    noiseExplains: explanation.noiseExplains,
    chiSquare: {
      before: explanation.before.chiSquare,
      after: explanation.after.chiSquare,
      degreesOfFreedom: explanation.after.degreesOfFreedom,
      probability: explanation.after.probability,
    },
    supports: estimate.supports.map((one) => ({
      support: one.support + 1,
      chainageMm: one.chainage * mm,
      plannedMm: one.planned * mm,
      departureMm: Number.isFinite(one.deviation) ? one.departure * mm : null,
      deviationMm: finite(one.deviation * mm),
      believedMm: belief.mean[one.support] * mm,
      detectableMm: finite(one.detectable * mm),
      wrong: wrong[one.support] !== 0,
    })),
    covarianceMm2: estimate.supports.map((_, i) => row(i)),
    wrong: explanation.supports.map(({ support, departure, deviation, statistic, rival }) => ({
      support: support + 1,
      departureMm: departure * mm,
      deviationMm: deviation * mm,
      statistic,
      ...(rival === null ? {} : { rival: input.readings[rival].name }),
    })),
    slips: explanation.slips.map((slip, i) => ({
      kind: slip.kind,
      at: slip.at,
      readings: slip.readings.map((index) => input.readings[index].name),
      ...(slip.support < 0 ? {} : { support: slip.support + 1 }),
      statistic: slip.statistic,
      critical: slip.critical,
      ...slipAmount(slip.kind, slip.amount, input.readings[slip.readings[0]]),
      text: words.slips[i],
    })),
    next:
      next === null || words.next === null
        ? null
        : {
            kind: next.kind,
            support: next.support + 1,
            ...(next.kind === 'grade' ? { baseMm: next.base * mm } : {}),
            text: words.next,
          },
    twist: twistReport(survey.twist, words.twist),
    mend: mendReport(done),
  };
}

/** Sentences that go into the document. */
export interface ReportWords {
  readonly text: readonly string[];
  readonly slips: readonly string[];
  readonly next: string | null;
  readonly twist: readonly string[];
}

function twistReport(twist: SurveyResult['survey']['twist'], text: readonly string[]): SurveyReport['twist'] {
  if (twist === null) return null;
  const covariance = acrossCovariance(twist);
  return {
    gaugeMm: twist.gauge * mm,
    places: twist.places.map(({ support, chainage, level, planned, departure, deviation, wrong }, i) => ({
      ...(support === null ? {} : { support: support + 1 }),
      chainageMm: chainage * mm,
      levelMm: level * mm,
      plannedMm: planned * mm,
      departureMm: departure * mm,
      deviationMm: deviation * mm,
      wrong,
      believedMm: twist.belief.mean[i] * railCentres(twist.gauge) * mm,
      believedDeviationMm: Math.sqrt(covariance[i][i]),
    })),
    believedCovarianceMm2: covariance,
    twists: twist.twists.map(({ from, to, twist: change, deviation, limit, verdict }) => ({
      fromMm: twist.places[from].chainage * mm,
      toMm: twist.places[to].chainage * mm,
      twistMm: change * mm,
      deviationMm: deviation * mm,
      limitMm: limit * mm,
      verdict,
    })),
    text: [...text],
  };
}

/** Of what is believed of the deck across, mm²: what each place has of its own, and what the zeros move together. */
function acrossCovariance({ belief, gauge }: NonNullable<SurveyResult['survey']['twist']>): number[][] {
  const scale = railCentres(gauge) * mm;
  return Array.from(belief.own, (own, i) =>
    Array.from(belief.own, (_, j) => {
      const together = belief.shared.reduce((sum, moved) => sum + moved[i] * moved[j], 0);
      return scale * scale * (i === j ? own * own + together : together);
    }),
  );
}

function slipAmount(kind: SurveyReport['slips'][number]['kind'], amount: number, first: Reading | undefined) {
  if (kind === 'shifted') return { supportsMoved: amount };
  const ofGrade = kind === 'percent-for-degrees' || kind === 'degrees-for-percent' || first?.kind === 'grade';
  if (kind === 'edge-radius' || kind === 'spacers' || !ofGrade) return { amountMm: amount * mm };
  return amount === 0 ? {} : { amountPercent: amount * 100 };
}

const checkReport = ({ limit, value, bound, chainage, holds }: LimitCheck) => ({
  limit,
  value: scaled(limit, value),
  bound: scaled(limit, bound),
  chainageMm: chainage * mm,
  holds,
});

const placeReport = ({ limit, chainage }: LimitPlace) => ({ limit, chainageMm: chainage * mm });

function mendReport(done: Mend): SurveyReportMend {
  switch (done.outcome) {
    case 'nothing-to-mend':
      return {
        outcome: done.outcome,
        reason: done.reason,
        limits: done.checks.map(checkReport),
        probability: done.probability,
      };
    case 'mended': {
      const unit = { fewest: 1, least: mm, flattest: 100 }[done.objective];
      return {
        outcome: done.outcome,
        objective: done.objective,
        aroundWrongOnes: done.others,
        steps: done.steps.map((step) => ({
          support: step.support + 1,
          changeMm: step.change * mm,
          ...(step.turns === null ? {} : { turns: step.turns }),
          ...(step.pieces.length === 0
            ? {}
            : { pieces: step.pieces.map(({ thickness, count }) => ({ thicknessMm: thickness * mm, count })) }),
          beforeMm: step.before * mm,
          afterMm: step.after * mm,
        })),
        proven: done.proof.optimal,
        value: done.proof.value * unit,
        bound: done.proof.bound * unit,
        limitsBefore: done.before.map(checkReport),
        limitsAfter: done.after.map(checkReport),
        probabilityBefore: done.probabilityBefore,
        probabilityAfter: done.probabilityAfter,
      };
    }
    case 'impossible':
      return {
        outcome: done.outcome,
        conflicts: done.conflicts.map(({ limit, bound, needed, place: at }) => ({
          limit,
          bound: scaled(limit, bound),
          needed: scaled(limit, needed),
          chainageMm: at.chainage * mm,
        })),
        together: done.together,
        irreducible: done.irreducible.map(placeReport),
        unlock: done.unlock.map((support) => support + 1),
        limits: done.checks.map(checkReport),
      };
  }
}
