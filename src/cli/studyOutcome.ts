import { closestCall, type Gauge, type Probe, passesBy } from '../sim/study/index.ts';
import { amountScales } from './reportFields.ts';
import type { OutcomeFields } from './sweepReport.ts';

/** What a probe came to, as the reports say it. */
export function outcomeFields(probe: Probe, gauge: Gauge): OutcomeFields {
  if (!probe.ok) return { passes: false, cannotRun: probe.reason };
  const passes = passesBy(gauge)(probe);
  const forces = {
    greatestDraftN: Math.max(...probe.trials.map(({ greatestDraft }) => greatestDraft)),
    greatestBuffN: Math.max(...probe.trials.map(({ greatestBuff }) => greatestBuff)),
  };
  const call = closestCall(probe, gauge);
  if (call === null) return { passes, ...forces };
  const [suffix, factor] = amountScales[call.unit];
  return {
    passes,
    closestRisk: call.risk,
    closestTrial: call.trialId,
    [`margin${suffix}`]: call.margin * factor,
    chainageMm: call.chainage * 1e3,
    ...forces,
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
export const outcomeColumns = [
  'passes',
  'closestRisk',
  'closestTrial',
  'marginMm',
  'marginDeg',
  'marginShare',
  'marginN',
  'chainageMm',
  'greatestDraftN',
  'greatestBuffN',
  'cannotRun',
] as const satisfies readonly (keyof OutcomeFields)[];
