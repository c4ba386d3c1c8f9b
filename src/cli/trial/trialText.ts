import { describeFinding, explainRisk, standingWords } from '../../core/findings/index.ts';
import type { RiskId } from '../../core/risks/types.ts';
import { formatForce, formatLength } from '../../core/units/index.ts';
import { type CompiledTrial, namingOf, standsWords, type TrialResult } from '../../sim/index.ts';
import type { TrialEntry } from './trialReport.ts';

const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

const outcomes: Readonly<Record<TrialEntry['outcome'], string>> = {
  arrived: 'Arrives',
  stalled: 'Stalls',
  parted: 'Parts',
  'end-of-track': 'Runs off the end of the track',
  'time-limit': 'Has not arrived',
};

/** As wide as the longest standing, `may fail`, with two spaces before it and one after. */
const indent = ' '.repeat(11);

export interface TextChoice {
  /** Say of every risk what it is, the first time it comes up. */
  readonly explain?: boolean | undefined;
}

/** One trial as a person reads it on a terminal: what became of it, then every finding, the gravest first. */
export function trialText(
  trial: CompiledTrial,
  result: TrialResult,
  entry: TrialEntry,
  { explain = false }: TextChoice = {},
): string {
  const naming = namingOf(trial, result);
  const verdict = entry.undecided === true ? standingWords.undecided : entry.verdict;
  const lines = [
    `${entry.name} (${entry.id})`,
    `  ${outcomes[entry.outcome]} after ${entry.durationS.toFixed(1)} s: ${verdict}.`,
  ];
  if (trial.legs) lines.push(`  Over ${trial.legs.map((leg) => leg.trackName).join(', ')}.`);
  if (trial.follows && entry.goesOnFrom !== undefined) {
    const start = formatLength(entry.goesOnFrom.chainageMm / 1e3, { unit: 'm', digits: 2 });
    lines.push(
      `  Goes on from ${trial.follows.name} (${trial.follows.id}): starts at ${start}, ${standsWords(entry.goesOnFrom)}.`,
    );
  }
  for (const joint of entry.joints ?? []) lines.push(`  ${jointText(joint)}`);
  if (entry.closest !== undefined) lines.push(`  ${entry.closest}`);
  const explained = new Set<RiskId>();
  for (const finding of result.findings) {
    const told = describeFinding(finding, naming, show);
    lines.push(`  ${told.standing.padEnd(8)} ${told.headline}`);
    if (explain && !explained.has(finding.risk)) lines.push(`${indent}[${told.title}: ${explainRisk(finding.risk)}]`);
    explained.add(finding.risk);
    lines.push(`${indent}${told.cause}`);
    lines.push(`${indent}Margin ${told.margin}${told.range === null ? '' : `, within tolerances ${told.range}`}.`);
    if (told.cures.length > 0) lines.push(`${indent}Try (not yet run): ${told.cures.join('; ')}.`);
  }
  const forces = [peakText('pull', entry.greatestDraft), peakText('push', entry.greatestBuff)].filter(
    (text) => text !== '',
  );
  if (forces.length > 0) lines.push(`  Greatest ${forces.join(', ')}.`);
  return lines.join('\n');
}

function jointText({ chainageMm, gapMm, turnDeg }: NonNullable<TrialEntry['joints']>[number]): string {
  const place = formatLength(chainageMm / 1e3, { unit: 'm', digits: 2 });
  return `The tracks do not quite meet at ${place}: ${gapMm.toFixed(2)} mm apart, turned by ${turnDeg.toFixed(3)}°.`;
}

function peakText(what: string, peak: TrialEntry['greatestDraft']): string {
  if (peak === null) return '';
  const place = formatLength(peak.chainageMm / 1e3, { unit: 'm', digits: 2 });
  return `${what} ${formatForce(Math.abs(peak.forceN), { digits: 2 })} at joint ${peak.joint}, ${place}`;
}
