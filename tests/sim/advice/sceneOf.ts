import type { Scene, SceneElement, SceneProfilePoint, SceneTrack } from '../../../src/scene/index.ts';
import { type Advice, type AdviceKind, adviceOf } from '../../../src/sim/advice/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { sampleScene } from '../../scene/sample.ts';

/** A bare track: no supports, joints or strip. */
export function bareTrack(
  id: string,
  alignment: SceneElement[],
  profile: SceneProfilePoint[] = [{ atMm: 0, heightMm: 0 }],
  start: SceneTrack['start'] = { xMm: 0, yMm: 0, headingDeg: 0 },
): SceneTrack {
  return { id, name: id, start, alignment, profile };
}

/** The sample's stock on other tracks; by choice only its coach, in a rake of two. */
export function railway(tracks: SceneTrack[], coachesAlone = false): Scene {
  const scene = { ...sampleScene(), tracks };
  if (!coachesAlone) return scene;
  return {
    ...scene,
    stock: scene.stock.filter(({ id }) => id === 'coach'),
    trains: [{ id: 'train', name: 'Train', vehicles: [{ stock: 'coach', count: 2 }] }],
  };
}

/** Every advice of one kind on a scene. */
export const factsOf = <K extends AdviceKind>(scene: Scene, kind: K): Extract<Advice, { kind: K }>[] =>
  adviceOf(compileScene(scene)).filter((one): one is Extract<Advice, { kind: K }> => one.kind === kind);
