import type { Scene } from '../../scene/index.ts';
import { compileScene, compileTrial } from '../../sim/index.ts';
import { givenWorking, trialWorked, withTrialWorked } from '../trialEdits.ts';
import { trialsOver } from './ways.ts';

/**
 * The trials that take every train of some tracks over its own track or route propelled, in each direction that the file has a trial for; a scene with those
 * added that the file does not have. A train that has an engine at both ends, or none, is left out.
 */
export function propelledTrials(
  scene: Scene,
  trackIds: readonly string[],
): { readonly scene: Scene; readonly trialIds: string[] } {
  let sofar = scene;
  const trialIds = new Set<string>();
  const compiled = compileScene(scene);
  for (const trial of trialsOver(scene, trackIds)) {
    if (compileTrial(compiled, trial.id).propelled) {
      trialIds.add(trial.id);
      continue;
    }
    const wanted = { ...givenWorking(scene, trial), leading: trial.leading === 'first' ? 'last' : 'first' } as const;
    const ready = trialWorked(sofar, trial, wanted);
    const worked = ready ? { scene: sofar, trialId: ready.id } : withTrialWorked(sofar, trial, wanted, trial.name);
    if (!compileTrial(compileScene(worked.scene), worked.trialId).propelled) continue;
    sofar = worked.scene;
    trialIds.add(worked.trialId);
  }
  return { scene: sofar, trialIds: [...trialIds] };
}
