import { riskTitle, showAmount } from '../../core/findings/index.ts';
import { risks } from '../../core/risks/index.ts';
import type { Scene } from '../../scene/index.ts';
import { sceneQuantities } from '../../scene/index.ts';
import {
  affectedTrials,
  closestCall,
  type Gauge,
  type MeasureLimit,
  missedLimits,
  type Probe,
} from '../../sim/study/index.ts';
import { BadInput } from '../exitCodes.ts';
import { limitFields, limitOf, missText } from './measureFields.ts';

const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

/** What every study command takes: which trials, which risk, how exactly. */
export interface StudyOptions {
  readonly trial?: readonly string[] | undefined;
  readonly risk?: string | undefined;
  readonly quick?: boolean | undefined;
  /** Each `MEASURE<=AMOUNT` or `MEASURE>=AMOUNT`: they count too. */
  readonly limit?: readonly string[] | undefined;
}

/** What decides whether a railway passes. */
export interface Judging {
  readonly gauge: Gauge;
  readonly limits?: readonly MeasureLimit[];
}

/**
 * Ids of the trials a study runs: those named, else all that the addresses make a difference to. Throws BadInput for one that the
 * scene does not have, and when there is nothing to run.
 */
export function studyTrials(scene: Scene, named: readonly string[] | undefined, varied: readonly string[]): string[] {
  const ids = scene.trials.map(({ id }) => id);
  const unknown = (named ?? []).find((id) => !ids.includes(id));
  if (unknown !== undefined) throw new BadInput(`The scene has no trial "${unknown}". It has: ${ids.join(', ')}.`);
  if (named !== undefined && named.length > 0) return [...named];
  const affected = new Set(varied.flatMap((at) => affectedTrials(scene, at)));
  if (affected.size === 0) throw new BadInput(`No trial runs on or with ${varied.join(' or ')}; name one by --trial.`);
  return ids.filter((id) => affected.has(id));
}

/** The gauge that `--risk` names. */
export function studyGauge(risk: string | undefined): Gauge {
  if (risk === undefined) return 'all';
  const found = risks.find(({ id }) => id === risk);
  if (found === undefined) {
    throw new BadInput(`There is no risk "${risk}". There are: ${risks.map(({ id }) => id).join(', ')}.`);
  }
  return found.id;
}

/** What decides, by `--risk` and `--limit`. */
export const studyJudging = ({ risk, limit }: StudyOptions): Required<Judging> => ({
  gauge: studyGauge(risk),
  limits: (limit ?? []).map(limitOf),
});

/** The same as reports say it. */
export const judgingFields = ({ gauge, limits }: Required<Judging>) => ({
  gauge,
  ...(limits.length > 0 && { limits: limits.map(limitFields) }),
});

/** Refuses an address that the scene has no number at, with those that look like it. */
export function checkAddress(scene: Scene, at: string): void {
  const known = sceneQuantities(scene).map((one) => one.at);
  if (known.includes(at)) return;
  const last = at.split('/').at(-1) ?? '';
  const like = known.filter((one) => one.endsWith(last)).slice(0, 8);
  const hint = like.length > 0 ? `Like it: ${like.join(', ')}.` : '`gradewright sweep FILE --list` shows them all.';
  throw new BadInput(`The scene says no number at "${at}". ${hint}`);
}

/** What the text of a study ends with when it was called off. */
export const wholeText = (whole: boolean): string =>
  whole ? '' : 'Stopped before its end: this is what was done until then.\n';

/** A closest call in words: `override 0.2 mm at 8.78 m (propelled-down)`, or why nothing could be run. */
export function callText(probe: Probe, { gauge, limits = [] }: Judging, several: boolean): string {
  if (!probe.ok) return `cannot be run: ${probe.reason}`;
  const call = closestCall(probe, gauge);
  const missed = missedLimits(probe, limits)
    .map((limit) => `; ${missText(limit, probe)}`)
    .join('');
  if (call === null) return `nothing can happen${missed}`;
  const stopped = probe.trials.find(({ outcome }) => outcome !== 'arrived');
  const words = `${riskTitle(call.risk).toLowerCase()} ${showAmount(call.margin, call.unit, show)} at ${(call.chainage * 1e3).toFixed(0)} mm`;
  const whose = several ? ` (${call.trialId})` : '';
  return `${words}${whose}${stopped === undefined ? '' : `; ${stopped.trialId} ${stopped.outcome}`}${missed}`;
}
