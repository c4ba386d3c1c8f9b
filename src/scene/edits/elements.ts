import { elementCurvatures, elementLengthMm, elementStartsMm } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneElement, ScenePlace, SceneTrack } from '../schema/trackSchema.ts';
import { bendOf } from './bendOf.ts';
import { splicedFates } from './chainageMap.ts';
import { freeId } from './ids.ts';
import { elementOf, trackOf } from './parts.ts';
import { putAlignment } from './putTrack.ts';
import { shortestMm, sized } from './sized.ts';
import { mmText } from './tidy.ts';

/** The scene with an element put in before the one at `index` (from 0; the number of elements puts it at the end). Throws RangeError in words. */
export function insertElement(scene: Scene, trackId: string, index: number, element: SceneElement): Scene {
  const track = trackOf(scene, trackId);
  const { alignment } = track;
  if (!Number.isInteger(index) || index < 0 || index > alignment.length) {
    throw new RangeError(`${track.name} has ${alignment.length} elements; there is no place ${index + 1} among them.`);
  }
  const id = element.id === undefined ? {} : { id: freeId(['track', ...alignment.map((one) => one.id)], element.id) };
  return putAlignment(scene, trackId, alignment.toSpliced(index, 0, { ...element, ...id }), [
    ...splicedFates(alignment.length, index, 0, 1),
  ]);
}

/** The scene without one element: what follows closes up, in the direction the track then has. Throws RangeError in words. */
export function removeElement(scene: Scene, trackId: string, index: number): Scene {
  const track = trackOf(scene, trackId);
  elementOf(track, index);
  const { alignment } = track;
  if (alignment.length === 1) throw new RangeError(`${track.name} has one element only; remove the track instead.`);
  return putAlignment(scene, trackId, alignment.toSpliced(index, 1), splicedFates(alignment.length, index, 1, 0));
}

/**
 * The scene with one element made two at a chainage, mm; the line stays where it is. The first keeps the name, and places counted from its
 * end are then counted from the end of the second. Throws RangeError in words.
 */
export function splitElement(scene: Scene, trackId: string, atMm: number): Scene {
  const track = trackOf(scene, trackId);
  const starts = elementStartsMm(track);
  const index = track.alignment.findIndex(
    (_, k) => atMm >= starts[k] + shortestMm && atMm <= starts[k + 1] - shortestMm,
  );
  if (index < 0) {
    throw new RangeError(
      `At ${mmText(atMm)} there is nothing of ${track.name} to split: within an element, not at its end.`,
    );
  }
  const element = track.alignment[index];
  const [first, second] = halves(track, index, atMm - starts[index]);
  const id =
    element.id === undefined
      ? undefined
      : freeId(
          track.alignment.map((one) => one.id),
          `${element.id}-2`,
        );
  const alignment = track.alignment.toSpliced(index, 1, first, id === undefined ? second : { ...second, id });
  const retargeted = id === undefined || element.id === undefined ? track : retarget(track, element.id, id);
  const next = { ...scene, tracks: scene.tracks.map((one) => (one.id === trackId ? retargeted : one)) };
  // Places that now name the second half must find it: both halves are there before anything is placed.
  return putAlignment(next, trackId, alignment, splicedFates(track.alignment.length, index, 1, 2));
}

function halves(track: SceneTrack, index: number, firstMm: number): [SceneElement, SceneElement] {
  const element = track.alignment[index];
  const { id, ...unnamed } = element;
  const lengthMm = elementLengthMm(element);
  const second = sized(unnamed as SceneElement, lengthMm - firstMm);
  const first = sized(element, firstMm);
  if (first.kind !== 'transition' || second.kind !== 'transition') return [first, second];
  const [from, to] = elementCurvatures(track, index);
  const middle = bendOf(from + ((to - from) * firstMm) / lengthMm);
  return [
    { ...first, to: middle },
    { ...second, from: middle },
  ];
}

/** Every place counted from the end of one element, counted from the end of another. */
function retarget(track: SceneTrack, from: string, to: string): SceneTrack {
  const turn = <P extends ScenePlace>(place: P): P =>
    place.at?.endOf === from ? { ...place, at: { ...place.at, endOf: to } } : place;
  const { supports, stripJoints, measured, rails, crossLevels } = track;
  return {
    ...track,
    profile: track.profile.map(turn),
    ...(Array.isArray(supports) && { supports: supports.map(turn) }),
    ...(stripJoints && { stripJoints: stripJoints.map(turn) }),
    ...(crossLevels && { crossLevels: crossLevels.map(turn) }),
    ...(measured && { measured: { ...measured, heights: measured.heights.map(turn) } }),
    ...(rails && {
      rails: {
        ...rails,
        ...(rails.offsets && { offsets: rails.offsets.map(turn) }),
        ...(rails.joints && { joints: rails.joints.map(turn) }),
        ...(rails.kinks && { kinks: rails.kinks.map(turn) }),
      },
    }),
  };
}
