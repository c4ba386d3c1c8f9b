import type { Track } from '../../core/track/types.ts';
import type { Scene } from '../../scene/index.ts';
import { type Advice, adviceOf } from '../../sim/advice/index.ts';
import { compileScene } from '../../sim/index.ts';
import { type Pass, passesOf } from '../../sim/passes.ts';
import type { CompiledScene } from '../../sim/types.ts';

const compiled = new WeakMap<Scene, CompiledScene>();

function draftOf(scene: Scene): CompiledScene | null {
  let known = compiled.get(scene);
  if (known === undefined) {
    try {
      known = compileScene(scene);
    } catch {
      return null;
    }
    compiled.set(scene, known);
  }
  return known;
}

/** A track of a scene as it now is, solved or not; null when there is none of that id or the scene cannot be compiled. */
export const draftTrack = (scene: Scene, trackId: string): Track | null => draftOf(scene)?.tracks.get(trackId) ?? null;

/** What passes over and under a track of a scene as it now is. */
export function draftPasses(scene: Scene, trackId: string): readonly Pass[] {
  const draft = draftOf(scene);
  return draft === null ? [] : passesOf(draft, trackId);
}

const advice = new WeakMap<CompiledScene, readonly Advice[]>();

/** What can be said of a scene from its drawing alone, the gravest first; nothing of one that cannot be compiled. */
export function draftAdvice(scene: Scene): readonly Advice[] {
  const draft = draftOf(scene);
  if (draft === null) return [];
  const known = advice.get(draft) ?? adviceOf(draft);
  advice.set(draft, known);
  return known;
}
