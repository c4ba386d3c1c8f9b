import { elementStartsMm, placedSupports, profileHeights } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { elementName, elementOf, trackOf } from './parts.ts';
import { putAlignment, putTrack } from './putTrack.ts';
import { tidy } from './tidy.ts';

/**
 * The scene with one more turn in a helix, a copy of its last: put in half a turn before its end, so that the grades and vertical curves at its mouths stay as they are.
 * All that comes after moves along by a turn's length, and up or down by what the turn climbs. Supports of a list are copied with it, as
 * planned. Throws RangeError in words for what is no helix of a whole turn.
 */
export function copyTurn(scene: Scene, trackId: string, index: number): Scene {
  const track = trackOf(scene, trackId);
  const helix = elementOf(track, index);
  if (helix.kind !== 'helix') throw new RangeError(`${elementName(track, index)} is no helix: it has no turn to copy.`);
  if (helix.turns < 1) throw new RangeError(`${elementName(track, index)} has no whole turn to copy.`);
  const turnMm = 2 * Math.PI * helix.radiusMm;
  const cutMm = elementStartsMm(track)[index + 1] - turnMm / 2;
  const climbMm = gradeAt(track, cutMm) * turnMm;
  const alignment = track.alignment.with(index, { ...helix, turns: tidy(helix.turns + 1) });
  const longer = putAlignment(scene, trackId, alignment, {
    at: (mm) => (mm <= cutMm ? mm : mm + turnMm),
    gone: () => false,
  });
  return putTrack(longer, withSupports(raised(trackOf(longer, trackId), cutMm, climbMm), track, cutMm, turnMm));
}

/** Grade of the straight line between the points of the heights at a chainage, as a ratio. */
function gradeAt(track: SceneTrack, mm: number): number {
  const points = profileHeights(track);
  const next = points.findIndex(({ atMm }, k) => k > 0 && atMm > mm);
  const to = next < 0 ? points.length - 1 : next;
  if (to < 1) return 0;
  return (points[to].heightMm - points[to - 1].heightMm) / (points[to].atMm - points[to - 1].atMm);
}

/** Points after a chainage that are given by their height, so much higher; those given by a grade follow of themselves. */
function raised(track: SceneTrack, cutMm: number, byMm: number): SceneTrack {
  const places = profileHeights(track);
  return {
    ...track,
    profile: track.profile.map((point, k) =>
      point.heightMm === undefined || places[k].atMm <= cutMm
        ? point
        : { ...point, heightMm: tidy(point.heightMm + byMm) },
    ),
  };
}

/** A list of supports with those of the turn before the cut once more, a turn further on. */
function withSupports(track: SceneTrack, before: SceneTrack, cutMm: number, turnMm: number): SceneTrack {
  const { supports } = track;
  if (!Array.isArray(supports)) return track;
  const copied = placedSupports(before)
    .filter(({ atMm }) => atMm > cutMm - turnMm && atMm <= cutMm)
    .map(({ atMm }) => ({ atMm: tidy(atMm + turnMm) }));
  const after = placedSupports(track).findIndex(({ atMm }) => atMm > cutMm);
  const place = after < 0 ? supports.length : after;
  return { ...track, supports: supports.toSpliced(place, 0, ...copied) };
}
