import { hypot } from '../math/index.ts';
import { wrappedAngle } from './angle.ts';
import { elementStretch } from './plan/elementStretch.ts';
import { trackPoint } from './point.ts';
import { TrackError } from './problem.ts';
import { CHAINAGE_ROUNDING, PieceWriter } from './profile/pieces.ts';
import { reverseTrack } from './reverse.ts';
import { makeTrack } from './track.ts';
import type { CantPoint, HeightPieces, HeldHeights, JoinJump, PlanElement, RailKink, Track } from './types.ts';

/** What a train runs over of one track: from one chainage, m, to another, backwards when the second is the smaller. */
export interface RouteStretch {
  readonly track: Track;
  readonly from: number;
  readonly to: number;
}

export interface Route {
  /** The stretches as one track, as built: heights (planned ones too), cant and kinks are those of the tracks. */
  readonly track: Track;
  /** Where each stretch starts, m along the route. */
  readonly starts: readonly number[];
  /** Where one stretch does not begin as the one before ended: what the route passes over as if it were not there. */
  readonly misfits: readonly JoinJump[];
}

/** Ends of stretches that are computed apart meet within this, m and rad. */
const MISFIT_TOLERANCE = 1e-9;

/** What a joint between two stretches may miss before it is no joint any more: 1 mm, as wide as a gap for the heat gets, and 1°. */
const JOINT_GAP = 1e-3;
const JOINT_TURN = Math.PI / 180;

/** Whether a train gets over a place where two stretches do not quite meet; what misses by more is a mistake in the plan. */
export const isJoint = ({ position, heading }: JoinJump): boolean =>
  position <= JOINT_GAP && Math.abs(heading) <= JOINT_TURN;

/** Cant changes hands between two stretches over this length, m: too short to matter, long enough to be a length. */
const CANT_SEAM = 1e-9;

/**
 * A route over stretches of several tracks as one track. Position is chained, so a gap between two stretches is closed and
 * reported in `misfits`; a turn between them is a kink of the route, and a step in height stays one. Throws TrackError
 * when there is no stretch or one has no length or leaves its track.
 */
export function routeTrack(stretches: readonly RouteStretch[]): Route {
  if (stretches.length === 0) throw new TrackError('bad-route', 'A route needs at least one stretch of track.');
  const elements: PlanElement[] = [];
  const kinks: RailKink[] = [];
  const held: HeldHeights[] = [];
  const planned: HeldHeights[] = [];
  const cants: CantPoint[] = [];
  const starts: number[] = [];
  const misfits: JoinJump[] = [];
  let chainage = 0;
  let last: ReturnType<typeof trackPoint> | undefined;
  let start = { x: 0, y: 0, heading: 0 };
  for (const stretch of stretches) {
    const { track, from, to } = alongChainage(stretch);
    const here = trackPoint(track, from);
    if (last === undefined) start = { x: here.x, y: here.y, heading: here.heading };
    else {
      const position = hypot(here.x - last.x, here.y - last.y, here.z - last.z);
      const heading = wrappedAngle(here.heading - last.heading);
      if (position > MISFIT_TOLERANCE || Math.abs(heading) > MISFIT_TOLERANCE) {
        misfits.push({ chainage, position, heading, curvature: here.curvature - last.curvature });
      }
      if (Math.abs(heading) > MISFIT_TOLERANCE) kinks.push({ chainage, turn: heading, reach: 0 });
    }
    for (const jump of track.jumps) {
      const inside = jump.chainage > from + CHAINAGE_ROUNDING && jump.chainage < to - CHAINAGE_ROUNDING;
      if (inside && jump.heading !== 0) {
        kinks.push({ chainage: chainage + jump.chainage - from, turn: jump.heading, reach: 0 });
      }
    }
    elements.push(...elementStretch(track.plan.elements, from, to));
    const over = { from: chainage, to: chainage + to - from };
    held.push({ ...over, pieces: shiftedPieces(track.profile, chainage - from) });
    planned.push({ ...over, pieces: shiftedPieces(track.plannedProfile, chainage - from) });
    if (track.cant !== null) cants.push(...cantAlong(track, from, to, chainage));
    else if (stretches.some((one) => one.track.cant !== null)) {
      cants.push({ chainage: chainage + CANT_SEAM, cant: 0 }, { chainage: chainage + to - from, cant: 0 });
    }
    starts.push(chainage);
    chainage += to - from;
    last = trackPoint(track, to);
  }
  const laid = (heights: readonly HeldHeights[]): Track =>
    makeTrack({
      start,
      elements,
      profile: { points: [{ chainage: 0, height: 0 }], held: heights },
      ...(cants.length > 0 && { cant: { points: cants, lever: 0 } }),
      ...(kinks.length > 0 && { lateral: { points: [], hinges: [], kinks } }),
    });
  const asPlanned = stretches.every(({ track }) => track.profile === track.plannedProfile);
  const built = laid(held);
  return { track: asPlanned ? built : { ...built, plannedProfile: laid(planned).profile }, starts, misfits };
}

/** A stretch as one of growing chainage, on the track reversed if need be. */
function alongChainage({ track, from, to }: RouteStretch): RouteStretch {
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  if (!(high - low > CHAINAGE_ROUNDING) || low < -CHAINAGE_ROUNDING || high > track.length + CHAINAGE_ROUNDING) {
    throw new TrackError(
      'bad-route',
      `A stretch from ${from} to ${to} m is not one of a track ${track.length} m long.`,
      from,
    );
  }
  if (from < to) return { track, from, to };
  return { track: reverseTrack(track), from: track.length - from, to: track.length - to };
}

function shiftedPieces({ startChainage, a, b, c, d, e }: HeightPieces, by: number): HeightPieces {
  const shifted = new PieceWriter();
  for (let k = 0; k < startChainage.length; k++) shifted.add(startChainage[k] + by, a[k], b[k], c[k], d[k], e[k]);
  return shifted.pieces();
}

function cantAlong(track: Track, from: number, to: number, chainage: number): CantPoint[] {
  const knots = [...(track.cant?.startChainage ?? [])].filter((s) => s > from + CANT_SEAM && s < to - CANT_SEAM);
  return [from + CANT_SEAM, ...knots, to].map((s) => ({
    chainage: chainage + s - from,
    cant: trackPoint(track, s).cant,
  }));
}
