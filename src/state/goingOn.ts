import { type Scene, trialsBefore } from '../scene/index.ts';
import { standsWords, takenOver } from '../sim/index.ts';
import type { SceneTrialEntry } from './trialEdits.ts';
import type { SessionState } from './types.ts';

/** The trials that one can go on from as far as their train and order go: of the same train, and none that goes on from it itself. */
export const trialsToGoOnFrom = (scene: Scene, trial: SceneTrialEntry): readonly SceneTrialEntry[] =>
  scene.trials.filter(
    (one) => one !== trial && one.train === trial.train && !trialsBefore(scene, one).some(({ id }) => id === trial.id),
  );

/** How the train on show stood as its run began, taken over from another trial: "all 3 couplings stretched"; null where it began by itself. */
export function beginsWords({ trial, result }: Pick<SessionState, 'trial' | 'result'>): string | null {
  const taken = trial && result?.trialId === trial.id ? takenOver(trial, result.run) : null;
  return taken && standsWords(taken);
}
