import type { StudyHooks } from '../../core/study/index.ts';
import type { Scene } from '../../scene/index.ts';
import { chanceOf, type Exactness, type ProbeBy, probeScene } from '../../sim/study/index.ts';
import { BadInput, exitCodes } from '../exitCodes.ts';
import { rangeOf } from '../fieldText.ts';
import type { ChanceReport } from './chanceReport.ts';
import { csvOf, outcomeColumns, outcomeFields } from './studyOutcome.ts';
import { checkAddress, judgingFields, type StudyOptions, studyJudging, studyTrials, wholeText } from './studyTrials.ts';
import type { StudyOutput } from './sweep.ts';

export interface ChanceOptions extends StudyOptions {
  /** Each `ADDRESS=LOW..HIGH`. */
  readonly vary: readonly string[];
  readonly draws?: string | undefined;
  readonly seed?: string | undefined;
}

/** Draws when none are asked for: a share is then known to about a tenth either way. */
const usualDraws = 40;
const mostDraws = 2_000;

/**
 * With what probability the trials pass when some numbers are only known within ranges, and which of the numbers decides. Exit code:
 * passes when every draw does. Throws BadInput for addresses and ranges that say nothing.
 */
export async function chance(
  scene: Scene,
  options: ChanceOptions,
  hooks: StudyHooks = {},
  probe: ProbeBy = probeScene,
): Promise<StudyOutput<ChanceReport>> {
  const ranges = options.vary.map((one) => rangeOf('vary', one));
  if (ranges.length === 0) throw new BadInput('Give --vary ADDRESS=LOW..HIGH for every number that is uncertain.');
  for (const { at } of ranges) checkAddress(scene, at);
  const draws = wholeOf('draws', options.draws ?? String(usualDraws), 1, mostDraws);
  const seed = wholeOf('seed', options.seed ?? '1', 0, 2 ** 31);
  const trials = studyTrials(
    scene,
    options.trial,
    ranges.map(({ at }) => at),
  );
  const judging = studyJudging(options);
  const exactness: Exactness = options.quick === true ? 'steady' : 'run';
  const quantities = ranges.map(({ at, from, to }) => ({ at, low: Math.min(from, to), high: Math.max(from, to) }));
  const found = await chanceOf(
    scene,
    quantities,
    draws,
    seed,
    { trialIds: trials, ...judging, exactness },
    probe,
    hooks,
  );
  const rows = found.draws.map(({ values, probe: outcome }) => ({
    values: [...values],
    ...outcomeFields(outcome, judging),
  }));
  const uncertain = ranges.map((range, k) => ({ ...range, influence: known(found.influence[k]) }));
  const head = {
    report: 'gradewright-chance',
    version: 1,
    scene: scene.name,
    trials,
    ...judgingFields(judging),
    exactness,
    whole: found.whole,
  } as const;
  const { passing } = found;
  return {
    report: { ...head, seed, passing, uncertain, draws: rows },
    text: `${scene.name}: ${passing === null ? 'nothing was run' : shareText(passing, rows.length)}\n${influenceText(uncertain)}${wholeText(found.whole)}`,
    csv: csvOf(
      [...ranges.map(({ at }) => at), ...outcomeColumns],
      rows.map(({ values, ...rest }) => ({
        ...Object.fromEntries(ranges.map(({ at }, k) => [at, values[k]])),
        ...rest,
      })),
    ),
    exitCode: found.whole && passing?.share === 1 ? exitCodes.passes : exitCodes.fails,
  };
}

const known = (value: number): number | null => (Number.isFinite(value) ? value : null);

function wholeOf(option: string, text: string, least: number, most: number): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  throw new BadInput(`--${option} is a whole number from ${least} to ${most}, not "${text}".`);
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

const shareText = ({ share, low, high }: NonNullable<ChanceReport['passing']>, draws: number): string =>
  `${percent(share)} of ${draws} draws pass; the true share is between ${percent(low)} and ${percent(high)} with 95 % confidence.`;

/** What decides, the strongest first. */
const influenceText = (uncertain: ChanceReport['uncertain']): string =>
  [...uncertain]
    .sort((a, b) => Math.abs(b.influence ?? 0) - Math.abs(a.influence ?? 0))
    .map(({ at, influence }) => {
      const words =
        influence === null ? 'makes no difference' : `${influence > 0 ? 'the more the better' : 'the less the better'}`;
      return `  ${(influence ?? 0).toFixed(2).padStart(5)}  ${at}: ${words}\n`;
    })
    .join('');
