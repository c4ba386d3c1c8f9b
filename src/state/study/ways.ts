import { type Scene, type SceneTrial, trackIdsOf } from '../../scene/index.ts';

/** Ids of the tracks that some trials run over, each once, in the order of the file. */
export function tracksUnder(scene: Scene, trialIds: readonly string[]): string[] {
  const used = new Set(scene.trials.filter(({ id }) => trialIds.includes(id)).flatMap(trackIdsOf));
  return scene.tracks.flatMap(({ id }) => (used.has(id) ? [id] : []));
}

/** The trials that run over one of these tracks at least, whole or on part of their route. */
export const trialsOver = (scene: Scene, trackIds: readonly string[]): readonly SceneTrial[] =>
  scene.trials.filter((trial) => trackIdsOf(trial).some((id) => trackIds.includes(id)));
