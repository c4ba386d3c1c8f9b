import { trackPoint } from './point.ts';
import { makeTrack } from './track.ts';
import type { ProfileSpec, Track } from './types.ts';

/**
 * The same track run the other way: chainage s becomes length - s, heading gains π, curvature and grade change sign.
 */
export function reverseTrack(track: Track): Track {
  const { spec, length } = track;
  const end = trackPoint(track, length);
  return makeTrack({
    start: { x: end.x, y: end.y, heading: end.heading + Math.PI },
    elements: [...spec.elements].reverse().map((element) => ({
      ...element,
      startCurvature: -element.endCurvature,
      endCurvature: -element.startCurvature,
    })),
    profile: reverseProfile(spec.profile, length),
  });
}

function reverseProfile(profile: ProfileSpec, length: number): ProfileSpec {
  const mirror = <T extends { readonly chainage: number }>(places: readonly T[]): T[] =>
    [...places].reverse().map((place) => ({ ...place, chainage: length - place.chainage }));
  const points = mirror(profile.points);
  if (profile.strip === undefined) return { points };
  const { supports, hinges } = profile.strip;
  return { points, strip: { supports: mirror(supports), hinges: hinges.map((hinge) => length - hinge).reverse() } };
}
