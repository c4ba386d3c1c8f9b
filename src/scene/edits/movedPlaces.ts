import { placedSupports, placeMm } from '../places.ts';
import type { ScenePlace, SceneTrack } from '../schema/trackSchema.ts';
import type { ChainageMap } from './chainageMap.ts';
import { tidy } from './tidy.ts';

/**
 * Everything along a track that is placed by a number, moved with the elements it lies on. Places relative to an element stay so; where that
 * element is gone they become numbers. What lay on an element that was taken out goes with it, but for the last point of the
 * heights. A row of supports at even distances spreads anew: support n stays support n.
 */
export function withPlacesMoved(before: SceneTrack, after: SceneTrack, map: ChainageMap): SceneTrack {
  const names = new Set(['track', ...after.alignment.flatMap(({ id }) => id ?? [])]);
  const move = <P extends ScenePlace>(place: P): P => {
    const name = place.at?.startOf ?? place.at?.endOf;
    if (place.at !== undefined && name !== undefined && names.has(name)) return place;
    const { at: _at, atMm: _atMm, ...rest } = place;
    return { ...rest, atMm: tidy(map.at(placeMm(before, place))) } as unknown as P;
  };
  const stays = (place: ScenePlace): boolean => !map.gone(placeMm(before, place));
  const moved = <P extends ScenePlace>(places: readonly P[]): P[] => places.filter(stays).map(move);
  const profile = before.profile.filter(stays);
  const { supports, stripJoints, measured, rails, crossLevels } = after;
  const heights = (profile.length > 0 ? profile : before.profile.slice(0, 1)).map(move);
  return spread({
    ...after,
    profile: apart(after, heights),
    ...(Array.isArray(supports) && { supports: moved(supports) }),
    ...(stripJoints && { stripJoints: moved(stripJoints) }),
    ...(crossLevels && { crossLevels: moved(crossLevels) }),
    ...(measured && { measured: { ...measured, heights: moved(measured.heights) } }),
    ...(rails && {
      rails: {
        ...rails,
        ...(rails.offsets && { offsets: moved(rails.offsets) }),
        ...(rails.joints && { joints: moved(rails.joints) }),
        ...(rails.kinks && { kinks: moved(rails.kinks) }),
      },
    }),
  });
}

/** Points of the heights nearer to each other than this, mm, have become one. */
const nearestMm = 1e-3;

/** Of points of the heights that have come to lie at one place, one: a relative one before one by number, else the first. */
function apart(track: SceneTrack, points: SceneTrack['profile']): SceneTrack['profile'] {
  const kept: SceneTrack['profile'] = [];
  for (const point of points) {
    const last = kept[kept.length - 1];
    if (last === undefined || Math.abs(placeMm(track, point) - placeMm(track, last)) > nearestMm) kept.push(point);
    else if (last.at === undefined && point.at !== undefined && kept.length > 1) kept[kept.length - 1] = point;
  }
  return kept;
}

/** A row of supports without departures of supports that the track is now too short for. */
export function spread(track: SceneTrack): SceneTrack {
  const { supports } = track;
  if (supports === undefined || Array.isArray(supports) || supports.off === undefined) return track;
  const count = placedSupports(track).length;
  const off = supports.off.filter(({ support }) => support <= count);
  return off.length === supports.off.length ? track : { ...track, supports: { ...supports, off } };
}
