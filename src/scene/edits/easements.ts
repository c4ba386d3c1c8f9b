import { elementCurvatures } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import { splicedFates } from './chainageMap.ts';
import { elementName, elementOf, trackOf } from './parts.ts';
import { putAlignment } from './putTrack.ts';
import { shortened } from './sized.ts';
import { mmText, tidy } from './tidy.ts';

/** Curvatures closer than this are the same curve, 1/m: a radius of 100 km. */
const sameCurvature = 1e-5;

/**
 * The scene with a transition of this length, mm, laid over the join before element `index`. Both neighbours give up half of it: the track
 * keeps its length and its direction beyond (a clothoid turns by the mean of its end curvatures), and moves aside by the shift of the
 * easement. Throws RangeError in words.
 */
export function easeJoin(scene: Scene, trackId: string, index: number, lengthMm: number): Scene {
  const track = trackOf(scene, trackId);
  const [before, after] = [elementOf(track, index - 1), elementOf(track, index)];
  if (before.kind === 'transition' || after.kind === 'transition') {
    throw new RangeError('There is an easement at this join already: change its length.');
  }
  const jump = elementCurvatures(track, index)[0] - elementCurvatures(track, index - 1)[1];
  if (Math.abs(jump) < sameCurvature) throw new RangeError('Nothing bends at this join: an easement eases nothing.');
  if (!(lengthMm > 0)) throw new RangeError(`An easement needs a length of more than 0, not ${lengthMm}.`);
  const [first, last] = [shortened(before, lengthMm / 2), shortened(after, lengthMm / 2)];
  if (first === null || last === null) {
    const tight = first === null ? index - 1 : index;
    throw new RangeError(
      `An easement of ${mmText(lengthMm)} takes ${mmText(lengthMm / 2)} of ${elementName(track, tight)}, which is shorter.`,
    );
  }
  const alignment = track.alignment.toSpliced(
    index - 1,
    2,
    first,
    { kind: 'transition', lengthMm: tidy(lengthMm) },
    last,
  );
  return putAlignment(scene, trackId, alignment, 'in-place');
}

/**
 * The scene with the transition at `index` made this long, mm, its neighbours giving up or taking back half of the difference each, so that the track
 * keeps its length and its direction beyond; 0 takes it out. Throws RangeError in words.
 */
export function setEasement(scene: Scene, trackId: string, index: number, lengthMm: number): Scene {
  const track = trackOf(scene, trackId);
  const easement = elementOf(track, index);
  if (easement.kind !== 'transition') throw new RangeError(`${elementName(track, index)} is no easement.`);
  if (!(lengthMm >= 0)) throw new RangeError(`An easement needs a length of 0 or more, not ${lengthMm}.`);
  const added = lengthMm - easement.lengthMm;
  const sides = [index - 1, index + 1].filter((k) => track.alignment[k] !== undefined);
  const alignment = [...track.alignment];
  for (const side of sides) {
    const left = shortened(track.alignment[side], added / 2);
    if (left === null) {
      throw new RangeError(
        `${elementName(track, side)} has no ${mmText(added / 2)} to give to an easement of ${mmText(lengthMm)}.`,
      );
    }
    alignment[side] = left;
  }
  // Between two neighbours the track keeps its length, and every place its chainage.
  const inPlace = sides.length === 2;
  if (lengthMm > 0) {
    alignment[index] = { ...easement, lengthMm: tidy(lengthMm) };
    return putAlignment(scene, trackId, alignment, inPlace ? 'in-place' : splicedFates(alignment.length, index, 0, 0));
  }
  if (sides.length === 0) throw new RangeError(`${elementName(track, index)} is all there is of ${track.name}.`);
  const fates = inPlace ? 'in-place' : splicedFates(alignment.length, index, 1, 0);
  return putAlignment(scene, trackId, alignment.toSpliced(index, 1), fates);
}
