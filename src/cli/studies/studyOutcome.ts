import { closestCall, missedLimits, type Probe, passesBy } from '../../sim/study/index.ts';
import { amountScales } from '../reportFields.ts';
import { measureColumns, measureFields } from './measureFields.ts';
import type { Judging } from './studyTrials.ts';
import type { OutcomeFields } from './sweepReport.ts';

/** What a probe came to, as the reports say it. */
export function outcomeFields(probe: Probe, { gauge, limits = [] }: Judging): OutcomeFields {
  if (!probe.ok) return { passes: false, cannotRun: probe.reason, ...measureFields(probe) };
  const missed = missedLimits(probe, limits).map(({ measure }) => measure);
  const call = closestCall(probe, gauge);
  const scale = call && amountScales[call.unit];
  return {
    passes: passesBy(gauge, limits)(probe),
    ...(call &&
      scale && {
        closestRisk: call.risk,
        closestTrial: call.trialId,
        [`margin${scale[0]}`]: call.margin * scale[1],
        chainageMm: call.chainage * 1e3,
      }),
    ...(missed.length > 0 && { missed }),
    ...measureFields(probe),
  };
}

/** Rows of plain numbers and words as comma-separated values; what a row lacks stays empty. */
export function csvOf(columns: readonly string[], rows: readonly Readonly<Record<string, unknown>>[]): string {
  const cell = (value: unknown): string => {
    const words = value === undefined ? '' : String(value);
    return /[",\n]/.test(words) ? `"${words.replaceAll('"', '""')}"` : words;
  };
  return `${[columns.join(','), ...rows.map((row) => columns.map((column) => cell(row[column])).join(','))].join('\n')}\n`;
}

/** Columns of an outcome in a table of comma-separated values. */
export const outcomeColumns: readonly string[] = [
  'passes',
  'closestRisk',
  'closestTrial',
  'marginMm',
  'marginDeg',
  'marginShare',
  'marginN',
  'chainageMm',
  'missed',
  ...measureColumns,
  'cannotRun',
];
