import type { Scene } from '../schema/schema.ts';
import type { SceneTrain } from '../schema/trialSchema.ts';
import { fittedRoute, fittedTrial } from './fittedTrial.ts';

/** The scene with the trials of trains that have changed brought inside their tracks again. Throws RangeError where one has no room. */
export function refitted(scene: Scene, changed: (train: SceneTrain) => boolean): Scene {
  const ids = new Set(scene.trains.filter(changed).map(({ id }) => id));
  const trials = scene.trials.map((trial) => {
    if (!ids.has(trial.train)) return trial;
    if (trial.route !== undefined) return fittedRoute(scene, trial);
    const track = scene.tracks.find(({ id }) => id === trial.track);
    return track === undefined ? trial : fittedTrial(scene, track, trial);
  });
  return { ...scene, trials };
}
