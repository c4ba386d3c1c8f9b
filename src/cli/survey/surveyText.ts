import {
  describeMend,
  describeSurvey,
  limitAmount,
  limitWords,
  type MendWords,
  type SurveyWords,
} from '../../core/survey/index.ts';
import { formatNumber } from '../../core/units/index.ts';
import type { LimitCheck, SurveyResult } from '../../sim/survey/index.ts';

const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

/** What a survey and its mending come to, in sentences. */
export const surveyWords = ({ survey, mend, task }: SurveyResult): { survey: SurveyWords; mend: MendWords } => ({
  survey: describeSurvey(survey, show),
  mend: describeMend(mend, task, show),
});

const mm = (value: number, digits: number): string =>
  Number.isFinite(value) ? formatNumber(value * 1e3, { digits }) : '–';

const signed = (value: number): string => formatNumber(value * 1e3, { digits: 2, signed: true });

/** A survey as a person reads it on a terminal: what to do, why, then every support. */
export function surveyText(scene: string, result: SurveyResult): string {
  const { survey, mend } = surveyWords(result);
  const { input, estimate } = result.survey;
  const from = result.surveyId === null ? 'readings from a file' : `survey ${result.surveyId}`;
  const lines = [
    `${scene}: ${from} of track ${result.trackId}, ${input.readings.length} readings of ${input.supports.length} supports`,
    '',
    mend.headline,
    ...mend.steps.map((step, i) => `  ${i + 1}. ${step}`),
    ...mend.notes.map((note) => `  ${note}`),
    '',
    'What the readings say',
    `  ${survey.verdict}`,
    ...[...survey.supports, ...survey.slips, ...survey.twist, ...survey.open].map((sentence) => `  ${sentence}`),
    `  ${survey.reach}`,
    ...(survey.next === null ? [] : [`  ${survey.next}`]),
    '',
    ...limitTable(result),
    'support   chainage    planned   off plan         ±      shown',
    ...estimate.supports.map((one) => {
      const off = Number.isFinite(one.deviation) ? signed(one.departure) : 'unseen';
      const wrong = result.survey.explanation.departures[one.support] !== 0 ? '  wrong' : '';
      return `${String(one.support + 1).padStart(7)}${mm(one.chainage, 0).padStart(11)}${mm(one.planned, 1).padStart(11)}${off.padStart(11)}${mm(one.deviation, 2).padStart(10)}${mm(one.detectable, 2).padStart(11)}${wrong}`;
    }),
    'All in mm. Off plan: built less planned by these readings alone. Shown: what they would show four times in five.',
  ];
  return `${lines.join('\n')}\n`;
}

function limitTable({ mend }: SurveyResult): string[] {
  const before = mend.outcome === 'mended' ? mend.before : mend.checks;
  const after = mend.outcome === 'mended' ? mend.after : [];
  const rows = before.map((check): string => {
    const later = after.find(({ limit }) => limit === check.limit);
    const then = later === undefined ? '' : `, after the work ${told(later)}`;
    return `  ${limitWords[check.limit]}: ${told(check)}${check.holds ? '' : ' (broken)'}${then}; allowed ${limitAmount(check.limit, check.bound, show)}`;
  });
  return ['Limits', ...rows, ''];
}

const told = ({ limit, value }: LimitCheck): string => limitAmount(limit, value, show);
