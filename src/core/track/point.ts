import { clamp, cos, sin } from '../math/index.ts';
import { placeInCant } from './cant/cant.ts';
import { placeInPlan } from './plan/plan.ts';
import { placeInProfile } from './profile/profile.ts';
import type { Track, TrackPoint } from './types.ts';

/** A point with every field present and nothing in it, to be reused as `out`. */
export const newTrackPoint = (): TrackPoint => ({
  chainage: 0,
  x: 0,
  y: 0,
  z: 0,
  heading: 0,
  curvature: 0,
  grade: 0,
  verticalCurvature: 0,
  cant: 0,
  twist: 0,
});

/**
 * Everything about chainage `s`, m, written into `out` (made when not given) without allocating.
 *
 * Outside [0, length] the track goes on straight at the heading, grade and cant of its end, with no curvature.
 */
export function trackPoint(track: Track, s: number, out: TrackPoint = newTrackPoint()): TrackPoint {
  const inside = clamp(s, 0, track.length);
  out.chainage = s;
  placeInPlan(track.plan, inside, out);
  placeInProfile(track.profile, inside, out);
  if (track.cant === null) {
    out.cant = 0;
    out.twist = 0;
  } else {
    placeInCant(track.cant, inside, out);
  }
  if (inside !== s) {
    const beyond = s - inside;
    out.x += beyond * cos(out.heading);
    out.y += beyond * sin(out.heading);
    out.z += beyond * out.grade;
    out.curvature = 0;
    out.verticalCurvature = 0;
    out.twist = 0;
  }
  return out;
}

const planned = { z: 0, grade: 0, verticalCurvature: 0 };

/** The planned height at chainage `s`, m: grade points and vertical curves without the departures of the strip. */
export function plannedHeight(track: Track, s: number): number {
  const inside = clamp(s, 0, track.length);
  placeInProfile(track.plannedProfile, inside, planned);
  return planned.z + (s - inside) * planned.grade;
}
