import { elementCurvatures } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneElement, SceneTrack } from '../schema/trackSchema.ts';
import { easeJoin } from './easements.ts';
import { elementName, trackOf } from './parts.ts';
import { putAlignment } from './putTrack.ts';
import { shortened } from './sized.ts';
import { mmText, tidy } from './tidy.ts';

/** Curvatures closer than this are the same curve, 1/m: a radius of 100 km. */
const sameCurvature = 1e-5;

/** One easement of a track: a transition, or a join that could have one. */
interface EasementPlace {
  /** Of the transition, or of the element after the join. */
  readonly index: number;
  /** Its length in terms of one easement, mm: a transition through straight from one hand to the other is two of them. */
  readonly lengthMm: number;
  readonly easements: 1 | 2;
}

/** The easements of a track, or, where it has none, the joins at which its curvature jumps, with a length of 0. */
export function easementPlaces(track: SceneTrack): EasementPlace[] {
  const { alignment } = track;
  const laid = alignment.flatMap((one, index): EasementPlace[] => {
    if (one.kind !== 'transition') return [];
    const easements = turnsOver(...elementCurvatures(track, index));
    return [{ index, lengthMm: one.lengthMm / easements, easements }];
  });
  if (laid.length > 0) return laid;
  return alignment.slice(1).flatMap((_, before): EasementPlace[] => {
    const from = elementCurvatures(track, before)[1];
    const to = elementCurvatures(track, before + 1)[0];
    if (Math.abs(to - from) < sameCurvature) return [];
    return [{ index: before + 1, lengthMm: 0, easements: turnsOver(from, to) }];
  });
}

const turnsOver = (from: number, to: number): 1 | 2 => (from * to < 0 ? 2 : 1);

/**
 * The scene with every easement of a track made this long, mm; on a track that has none, with one at every join where the curvature jumps. Straights
 * and curves beside them give up or take back half of each difference, so that every bend keeps its angle; where two easements touch, the
 * line beyond moves along. Throws RangeError in words where an element has no room for it.
 */
export function setAllEasements(scene: Scene, trackId: string, lengthMm: number): Scene {
  const track = trackOf(scene, trackId);
  if (!(lengthMm > 0)) throw new RangeError(`An easement needs a length of more than 0, not ${lengthMm}.`);
  const places = easementPlaces(track);
  if (places.length === 0) throw new RangeError(`Nothing bends on ${track.name}: an easement eases nothing.`);
  if (track.alignment[places[0].index].kind !== 'transition') {
    // From the far end back, so that an index stays what it was while elements come behind it.
    return places.reduceRight(
      (sofar, { index, easements }) => easeJoin(sofar, trackId, index, easements * lengthMm),
      scene,
    );
  }
  const alignment: SceneElement[] = [...track.alignment];
  for (const { index, easements, lengthMm: before } of places) {
    for (const side of [index - 1, index + 1]) {
      const neighbour = alignment[side];
      if (neighbour === undefined || neighbour.kind === 'transition') continue;
      const left = shortened(neighbour, (easements * (lengthMm - before)) / 2);
      if (left === null) {
        throw new RangeError(`${elementName(track, side)} has no room for easements of ${mmText(lengthMm)}.`);
      }
      alignment[side] = left;
    }
    alignment[index] = { ...alignment[index], kind: 'transition', lengthMm: tidy(easements * lengthMm) };
  }
  return putAlignment(
    scene,
    trackId,
    alignment,
    alignment.map((_, k) => ({ from: k, to: k + 1 })),
  );
}
