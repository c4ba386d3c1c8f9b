import type { Track } from '../core/track/types.ts';
import type { SceneTrack } from '../scene/index.ts';
import { compileTrack } from './compileTrack.ts';

/** Most tracks kept: two railways of the size of a club's, one before a change and one after it. */
const most = 64;

interface Kept {
  readonly track: Track;
  /** The main track that it was laid from; undefined where it has a start of its own. */
  readonly main: Track | undefined;
}

/** By what the file says of each, the one longest unused first. */
const kept = new Map<string, Kept>();

/**
 * A track of a scene as `compileTrack` lays it, and the very same object as long as neither it nor the track that it branches off has changed, so that what
 * was worked out for it holds on: an edit mostly changes one track of many, and a scene that comes through a worker's door is another object each time.
 * Throws as `compileTrack`.
 */
export function keptTrack(file: SceneTrack, earlier: ReadonlyMap<string, Track>): Track {
  const key = JSON.stringify(file);
  const main = 'branchOf' in file.start ? earlier.get(file.start.branchOf) : undefined;
  const known = kept.get(key);
  const track = known !== undefined && known.main === main ? known.track : compileTrack(file, earlier);
  kept.delete(key);
  kept.set(key, { track, main });
  for (const oldest of kept.keys()) {
    if (kept.size <= most) break;
    kept.delete(oldest);
  }
  return track;
}
