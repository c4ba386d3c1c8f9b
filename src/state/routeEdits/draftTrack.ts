import type { Track } from '../../core/track/types.ts';
import type { Scene } from '../../scene/index.ts';
import { compileScene } from '../../sim/index.ts';
import type { CompiledScene } from '../../sim/types.ts';

const compiled = new WeakMap<Scene, CompiledScene>();

/** A track of a scene as it now is, solved or not; null when there is none of that id or the scene cannot be compiled. */
export function draftTrack(scene: Scene, trackId: string): Track | null {
  let known = compiled.get(scene);
  if (known === undefined) {
    try {
      known = compileScene(scene);
    } catch {
      return null;
    }
    compiled.set(scene, known);
  }
  return known.tracks.get(trackId) ?? null;
}
