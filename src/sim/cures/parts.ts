import { type Scene, type SceneTrack, type SceneTrain, type SceneTrial, tidy } from '../../scene/index.ts';

/** The parts of a scene that one trial uses; null when one is not there. */
export interface TrialParts {
  readonly trial: SceneTrial;
  readonly track: SceneTrack;
  readonly train: SceneTrain;
}

export function trialParts(scene: Scene, trialId: string): TrialParts | null {
  const trial = scene.trials.find((one) => one.id === trialId);
  const track = scene.tracks.find((one) => one.id === trial?.track);
  const train = scene.trains.find((one) => one.id === trial?.train);
  return trial === undefined || track === undefined || train === undefined ? null : { trial, track, train };
}

/** A scene with one part put in the place of the part with the same id. */
export const withTrack = (scene: Scene, track: SceneTrack): Scene => ({
  ...scene,
  tracks: replaced(scene.tracks, track),
});
export const withTrain = (scene: Scene, train: SceneTrain): Scene => ({
  ...scene,
  trains: replaced(scene.trains, train),
});
export const withTrial = (scene: Scene, trial: SceneTrial): Scene => ({
  ...scene,
  trials: replaced(scene.trials, trial),
});

const replaced = <T extends { id: string }>(list: readonly T[], one: T): T[] =>
  list.map((entry) => (entry.id === one.id ? one : entry));

/** Metres as millimetres, without the dust of binary fractions. */
export const fileMm = (metres: number): number => tidy(metres * 1e3);
