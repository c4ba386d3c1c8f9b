import { describeFinding } from '../core/findings/index.ts';
import { formatForce, formatLength } from '../core/units/index.ts';
import type { CompiledTrial, TrialResult } from '../sim/index.ts';
import { namingOf } from './trialEntry.ts';
import type { TrialEntry } from './trialReport.ts';

const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

const outcomes: Readonly<Record<TrialEntry['outcome'], string>> = {
  arrived: 'Arrives',
  stalled: 'Stalls',
  parted: 'Parts',
  'end-of-track': 'Runs off the end of the track',
  'time-limit': 'Has not arrived',
};

const indent = ' '.repeat(9);

/** One trial as a person reads it on a terminal: what became of it, then every finding, the gravest first. */
export function trialText(trial: CompiledTrial, result: TrialResult, entry: TrialEntry): string {
  const naming = namingOf(trial, result);
  const lines = [
    `${entry.name} (${entry.id})`,
    `  ${outcomes[entry.outcome]} after ${entry.durationS.toFixed(1)} s: ${entry.verdict}.`,
  ];
  for (const finding of result.findings) {
    const told = describeFinding(finding, naming, show);
    lines.push(`  ${finding.verdict.padEnd(6)} ${told.headline}`);
    lines.push(`${indent}${told.cause}`);
    lines.push(`${indent}Margin ${told.margin}${told.range === null ? '' : ` (${told.range} over the tolerances)`}.`);
    if (told.cures.length > 0) lines.push(`${indent}Try: ${told.cures.join('; ')}.`);
  }
  const forces = [peakText('pull', entry.greatestDraft), peakText('push', entry.greatestBuff)].filter(
    (text) => text !== '',
  );
  if (forces.length > 0) lines.push(`  Greatest ${forces.join(', ')}.`);
  return lines.join('\n');
}

function peakText(what: string, peak: TrialEntry['greatestDraft']): string {
  if (peak === null) return '';
  const place = formatLength(peak.chainageMm / 1e3, { unit: 'm', digits: 2 });
  return `${what} ${formatForce(Math.abs(peak.forceN), { digits: 2 })} at joint ${peak.joint}, ${place}`;
}
