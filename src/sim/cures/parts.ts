import {
  type Scene,
  type SceneTrack,
  type SceneTrain,
  type SceneTrial,
  tidy,
  wayLengthMm,
  wayOf,
} from '../../scene/index.ts';

/** The parts of a scene that one trial uses; null when one is not there. */
export interface TrialParts {
  readonly trial: SceneTrial;
  readonly train: SceneTrain;
}

export function trialParts(scene: Scene, trialId: string): TrialParts | null {
  const trial = scene.trials.find((one) => one.id === trialId);
  const train = scene.trains.find((one) => one.id === trial?.train);
  return trial === undefined || train === undefined ? null : { trial, train };
}

/** The track that a cure is about, and the chainage on it (m) of one that the trial counts; null when there is no such leg. */
export interface CuredTrack {
  readonly track: SceneTrack;
  own(chainage: number): number;
}

export function curedTrack(scene: Scene, trial: SceneTrial, leg: number | undefined): CuredTrack | null {
  const way = wayOf(scene, trial) ?? [];
  const on = way[leg ?? 0];
  if (on === undefined) return null;
  if (trial.route === undefined) return { track: on.track, own: (chainage) => chainage };
  const start = wayLengthMm(way.slice(0, leg ?? 0)) / 1e3;
  const forward = on.toMm > on.fromMm ? 1 : -1;
  return { track: on.track, own: (chainage) => on.fromMm / 1e3 + forward * (chainage - start) };
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
