import { sumPieces } from './cubic.ts';
import { gradeLine } from './gradeLine.ts';
import { curvatureJumps } from './joins.ts';
import { preparePlan } from './plan.ts';
import { prepareProfile } from './profile.ts';
import { railAt } from './rail.ts';
import { bentStrip } from './strip.ts';
import type { Track, TrackSpec } from './types.ts';

/**
 * Prepares a track from its specification, so that every query takes constant time.
 *
 * Throws TrackError (a RangeError), whose message is a sentence with chainage and amount, when the elements have no
 * length, vertical curves overlap or reach beyond the ends, or the strip cannot be held by its supports.
 */
export function makeTrack(spec: TrackSpec): Track {
  const plan = preparePlan(spec);
  const last = plan.elements.length - 1;
  const length = plan.startChainage[last] + plan.elements[last].length;
  const planned = gradeLine(spec.profile.points, length);
  const plannedProfile = prepareProfile(sumPieces([planned], length), length);
  const strip = spec.profile.strip;
  const profile =
    strip === undefined ? plannedProfile : prepareProfile(sumPieces([planned, bentStrip(strip)], length), length);
  const track = { length, railLength: 0, spec, plan, profile, plannedProfile, jumps: curvatureJumps(plan) };
  track.railLength = railAt(track, length);
  return track;
}
