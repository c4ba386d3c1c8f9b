import { type Scene, type SceneTrial, trackIdsOf } from '../../scene/index.ts';

/** The trials that run over one of these tracks at least, whole or on part of their route. */
export const trialsOver = (scene: Scene, trackIds: readonly string[]): readonly SceneTrial[] =>
  scene.trials.filter((trial) => trackIdsOf(trial).some((id) => trackIds.includes(id)));
