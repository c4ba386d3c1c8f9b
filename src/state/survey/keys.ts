import type { Scene, SceneSurvey } from '../../scene/index.ts';
import { asBuiltScene } from '../../sim/survey/index.ts';

/** Everything that a survey is estimated from: how the scene says its own track stands is no part of it. */
export function estimateKey(scene: Scene, { name: _name, mend: _mend, ...survey }: SceneSurvey): string {
  const planned = asBuiltScene(scene, survey.track, []);
  return JSON.stringify([planned.tracks, planned.deck, planned.scale, survey]);
}

/** Everything that its mending follows from, the objective aside. */
export const mendKey = (scene: Scene, survey: SceneSurvey): string =>
  JSON.stringify([estimateKey(scene, survey), survey.mend ?? null]);
