import type { Track } from '../core/track/types.ts';
import type { Scene } from '../scene/index.ts';
import { keptTrack } from './keptTracks.ts';
import type { CompiledScene } from './types.ts';

/** A checked scene in SI. Throws RangeError, naming the track, when a track cannot be laid. */
export function compileScene(scene: Scene): CompiledScene {
  const tracks = new Map<string, Track>();
  for (const track of scene.tracks) tracks.set(track.id, keptTrack(track, tracks));
  return { scene, tracks };
}
