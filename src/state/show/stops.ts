import { type Standing, standingOf } from '../../core/findings/index.ts';
import type { Finding } from '../../core/findings/types.ts';
import type { Scene, SceneTourStop, SceneTourView } from '../../scene/index.ts';
import type { SessionState, TrialResult } from '../types.ts';
import { describeOf } from '../words.ts';

/** The stop on show and its number in the tour, from 0; null when none is. */
export function stopOnShow({ scene, tour }: Pick<SessionState, 'scene' | 'tour'>): {
  readonly stop: SceneTourStop;
  readonly index: number;
} | null {
  const index = scene?.tour?.findIndex(({ id }) => id === tour.stop) ?? -1;
  const stop = scene?.tour?.[index];
  return stop === undefined ? null : { stop, index };
}

/** Id of the trial that a stop shows. */
export const trialOfStop = ({ opensWith, trials }: Scene, { trial }: SceneTourStop): string =>
  trial ?? opensWith ?? trials[0].id;

/** Joint of the run (from 0) that a view of the scene names by its number, or null; the last one of a train with fewer. */
export function jointOfView(
  view: SceneTourView,
  trial: Pick<NonNullable<SessionState['trial']>, 'train' | 'lastLeads'>,
): number | null {
  const joints = trial.train.vehicles.length - 1;
  if (!('joint' in view) || view.joint === undefined || joints < 1) return null;
  const number = Math.min(view.joint, joints);
  return trial.lastLeads ? joints - number : number - 1;
}

/** Number of a joint of the run, as a scene says it. */
export const jointNumberOf = (joint: number, { train, lastLeads }: NonNullable<SessionState['trial']>): number =>
  lastLeads ? train.vehicles.length - 1 - joint : joint + 1;

/** Index of the finding that a stop tells of: of its check the one nearest to its moment; null where it tells of the whole trial. */
export function findingOfStop(stop: SceneTourStop, { findings }: Pick<TrialResult, 'findings'>): number | null {
  const moment = stop.tillS ?? stop.atS ?? 0;
  let best: number | null = null;
  findings.forEach(({ risk, time }, index) => {
    if (risk !== stop.risk) return;
    if (best === null || Math.abs(time - moment) < Math.abs(findings[best].time - moment)) best = index;
  });
  return best;
}

/** The gravest there is to say of a trial; passes where there is nothing. */
const gravest = (findings: readonly Finding[]): Finding | null => findings[0] ?? null;

/** A standing for an audience that does not know the words of the ledger. */
const outcomes: Readonly<Record<Standing, string>> = {
  fails: 'Fails.',
  undecided: 'May fail.',
  near: 'Passes, but only just.',
  passes: 'Passes.',
};

/** What a stop says once its verdict is not covered. */
export interface StopVerdict {
  readonly standing: Standing;
  /** `Fails.`, `May fail.`, `Passes, but only just.`, `Passes.` */
  readonly word: string;
  /** Of the check, or of what is gravest in the trial; empty where nothing was found. */
  readonly margin: string;
  readonly title: string;
  readonly sentence: string;
  readonly cause: string;
  /** The check that it is about is not the stop's own: the stop tells of the whole trial. */
  readonly ofTrial: boolean;
}

type Told = Pick<SessionState, 'trial' | 'result' | 'lengthUnit' | 'gradeForm'>;

/** The verdict at a stop by the trial as it is solved now; null while it is not. */
export function verdictOfStop(state: Told, stop: SceneTourStop): StopVerdict | null {
  const { result } = state;
  if (result === null) return null;
  const own = findingOfStop(stop, result);
  const finding = own === null ? gravest(result.findings) : result.findings[own];
  if (finding === null) {
    return { standing: 'passes', word: outcomes.passes, margin: '', title: '', sentence: '', cause: '', ofTrial: true };
  }
  const { title, headline, cause, margin } = describeOf(state, finding);
  const standing = standingOf(finding);
  return {
    standing,
    word: outcomes[standing],
    margin,
    title,
    sentence: headline,
    cause,
    ofTrial: own === null,
  };
}
