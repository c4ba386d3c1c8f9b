import { cantLift, prepareCant } from './cant/cant.ts';
import { builtCant } from './cant/lean.ts';
import { preparePlan } from './plan/plan.ts';
import { gradeLine } from './profile/gradeLine.ts';
import { checkHeld, heightJumps } from './profile/held.ts';
import { joinJumps } from './profile/jumps.ts';
import { measuredLine } from './profile/measured.ts';
import { overlaidPieces, sumPieces } from './profile/pieces.ts';
import { prepareProfile } from './profile/profile.ts';
import { railAt } from './profile/rail.ts';
import { bentStrip } from './strip/strip.ts';
import type { HeightPieces, Track, TrackSpec } from './types.ts';

/**
 * Prepares a track from its specification, so that every query takes constant time.
 *
 * Throws TrackError (a RangeError), whose message is a sentence with chainage and amount, when the elements have no
 * length, vertical curves overlap or reach beyond the ends, the strip cannot be held by its supports, or cant does not rise in chainage.
 */
export function makeTrack(spec: TrackSpec): Track {
  const plan = preparePlan(spec);
  const last = plan.elements.length - 1;
  const length = plan.startChainage[last] + plan.elements[last].length;
  const built = builtCant(spec);
  const cant = built === null ? null : prepareCant(built, length);
  const planned = [gradeLine(spec.profile.points, length)];
  if (spec.cant !== undefined && spec.cant.lever !== 0) planned.push(cantLift(spec.cant));
  const held = spec.profile.held ?? [];
  checkHeld(held, length);
  const line = (parts: readonly HeightPieces[]): HeightPieces => {
    const own = sumPieces(parts, length);
    if (held.length === 0) return own;
    const pieces = held.reduce((under, { pieces, from, to }) => overlaidPieces(under, pieces, from, to), own);
    return sumPieces([pieces], length);
  };
  const plannedProfile = prepareProfile(line(planned), length);
  const { strip, measured } = spec.profile;
  let profile = plannedProfile;
  if (strip !== undefined) profile = prepareProfile(line([...planned, bentStrip(strip)]), length);
  else if (measured !== undefined) profile = prepareProfile(line([measuredLine(measured)]), length);
  const jumps = [...joinJumps(plan), ...heightJumps(profile, held)].sort((p, q) => p.chainage - q.chainage);
  const track = { length, railLength: 0, spec, plan, profile, plannedProfile, cant, jumps };
  track.railLength = railAt(track, length);
  return track;
}
