import type { SceneTrack } from '../../scene/index.ts';
import type { CompiledScene } from '../types.ts';
import { type Collection, collectionOf } from './collection.ts';

/** What facts about one track were found from. */
interface Found<T> {
  readonly lineage: readonly SceneTrack[];
  readonly collection: Collection;
  readonly facts: readonly T[];
}

/** A track and those it branches off, one after the other: all that its line depends on. */
function lineageOf(tracks: readonly SceneTrack[], track: SceneTrack): SceneTrack[] {
  const lineage = [track];
  for (let one: SceneTrack | undefined = track; one !== undefined && 'branchOf' in one.start; ) {
    const id: string = one.start.branchOf;
    one = tracks.find((other) => other.id === id);
    if (one === undefined || lineage.includes(one)) break;
    lineage.push(one);
  }
  return lineage;
}

/**
 * Facts that depend on a track's own line and the collection alone, found anew only for the tracks that have changed: an edit leaves the other
 * tracks of the file the same objects.
 */
export function byTrack<T>(
  find: (compiled: CompiledScene, track: SceneTrack) => readonly T[],
): (compiled: CompiledScene) => readonly T[] {
  const known = new WeakMap<SceneTrack, Found<T>>();
  return (compiled) => {
    const { tracks } = compiled.scene;
    const collection = collectionOf(compiled.scene);
    return tracks.flatMap((track) => {
      const lineage = lineageOf(tracks, track);
      const before = known.get(track);
      const same =
        before !== undefined &&
        before.collection === collection &&
        before.lineage.length === lineage.length &&
        before.lineage.every((one, k) => one === lineage[k]);
      if (same) return before.facts;
      const facts = find(compiled, track);
      known.set(track, { lineage, collection, facts });
      return facts;
    });
  };
}
