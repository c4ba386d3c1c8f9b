import { clamp, cos, hypot, newton, sin, type Vec3 } from '../math/index.ts';
import { trackPoint } from './point.ts';
import { CHAINAGE_ROUNDING } from './profile/pieces.ts';
import type { Track, TrackPoint } from './types.ts';

/** A place on the track and how far it is from the point asked about, m. */
export interface Nearest {
  readonly chainage: number;
  readonly distance: number;
}

/**
 * An interval in which the distance is not known to be convex is let go when it holds nothing nearer by more than this,
 * m. Only points as good as on an axis of curvature get there; 1e-9 m is promised.
 */
const DISTANCE_TOLERANCE = 1e-12;

/** A stretch without joins, and the greatest values of what bends it. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  /** |κ|, 1/m; |dκ/ds|, 1/m²; |dz/ds|; |d²z/ds²|, 1/m; |d³z/ds³|, 1/m². */
  readonly curvature: number;
  readonly sharpness: number;
  readonly grade: number;
  readonly bend: number;
  readonly twist: number;
}

/** The target as seen from a place of the track: E is half the squared distance, with its derivatives by chainage. */
interface Sight {
  place: TrackPoint;
  /** From the target to the place: along the heading, to its left, up, m. */
  along: number;
  left: number;
  up: number;
  e: number;
  slope: number;
  bend: number;
}

/**
 * The nearest place of the whole track, ends included, to a point [x, y, z] in space, distance to 1e-9 m.
 *
 * Branch and bound on E = |P - p|²/2: about the middle of an interval E is a parabola within J·h³/6, J a bound of |E‴|,
 * which bounds it from below and tells where it is convex; there Newton ends the search. Height counts, so the turns of a
 * helix are told apart. At the centre of a level arc every place is as near, and one of them is given.
 */
export function nearestChainage(track: Track, target: Vec3): Nearest {
  const sight: Sight = { place: trackPoint(track, 0), along: 0, left: 0, up: 0, e: 0, slope: 0, bend: 0 };
  let chainage = 0;
  let best = Number.POSITIVE_INFINITY;
  const consider = (s: number): number => {
    look(track, s, target, sight);
    if (sight.e < best) {
      best = sight.e;
      chainage = s;
    }
    return sight.e;
  };
  const slope = (s: number): number => look(track, s, target, sight).slope;
  const bend = (s: number): number => look(track, s, target, sight).bend;

  consider(track.length);
  const waiting = smoothStretches(track)
    .map((stretch) => ({ stretch, e: Math.min(consider(stretch.from), consider((stretch.from + stretch.to) / 2)) }))
    .sort((p, q) => q.e - p.e)
    .map(({ stretch }) => ({ stretch, from: stretch.from, to: stretch.to }));
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { stretch, from, to } = next;
    const middle = (from + to) / 2;
    const h = (to - from) / 2;
    consider(middle);
    const third = boundOfThirdDerivative(sight, stretch, h);
    const least = leastOfParabola(sight, h) - (third * h * h * h) / 6;
    if (least >= best) continue;
    if (sight.bend > third * h) {
      // Asked just before the end, where a break of grade still shows the near side.
      const end = Math.max(from, to - CHAINAGE_ROUNDING);
      if (slope(from) >= 0) consider(from);
      else if (slope(end) <= 0) consider(to);
      else consider(newton(slope, bend, from, end, middle));
    } else if (least < best - DISTANCE_TOLERANCE * Math.sqrt(2 * best)) {
      waiting.push({ stretch, from, to: middle }, { stretch, from: middle, to });
    }
  }
  return { chainage, distance: Math.sqrt(2 * best) };
}

function look(track: Track, s: number, target: Vec3, sight: Sight): Sight {
  const place = trackPoint(track, s, sight.place);
  const cosine = cos(place.heading);
  const sine = sin(place.heading);
  const dx = place.x - target[0];
  const dy = place.y - target[1];
  sight.along = dx * cosine + dy * sine;
  sight.left = dy * cosine - dx * sine;
  sight.up = place.z - target[2];
  sight.e = (dx * dx + dy * dy + sight.up * sight.up) / 2;
  sight.slope = sight.along + sight.up * place.grade;
  sight.bend = 1 + place.grade * place.grade + place.curvature * sight.left + place.verticalCurvature * sight.up;
  return sight;
}

/**
 * A bound of |E‴| = |3·g·z″ + κ′·left - κ²·along + z‴·up| within `h` of the place. In plan the target comes nearer or goes
 * farther by at most h; `along` changes at the rate 1 + κ·left, which itself changes by κ′·left - κ²·along.
 */
function boundOfThirdDerivative(sight: Sight, stretch: Stretch, h: number): number {
  const { curvature: k, sharpness, grade, bend, twist } = stretch;
  const reach = hypot(sight.along, sight.left) + h;
  const loosely = Math.min(reach, Math.abs(sight.along) + h * (1 + k * reach));
  const rate = Math.abs(1 + sight.place.curvature * sight.left) + h * (sharpness * reach + k * k * loosely);
  const along = Math.min(reach, Math.abs(sight.along) + h * rate);
  return 3 * grade * bend + sharpness * reach + k * k * along + twist * (Math.abs(sight.up) + h * grade);
}

/** The least of e + slope·u + bend·u²/2 over |u| <= h. */
function leastOfParabola(sight: Sight, h: number): number {
  const { e, slope, bend } = sight;
  if (bend <= 0) return e - Math.abs(slope) * h + (bend * h * h) / 2;
  const u = clamp(-slope / bend, -h, h);
  return e + u * (slope + (bend * u) / 2);
}

/** The track cut where its curvature or the polynomial of its height changes. */
function smoothStretches(track: Track): Stretch[] {
  const { plan, profile, length } = track;
  const stretches: Stretch[] = [];
  let k = 0;
  let j = 0;
  let from = 0;
  while (from < length) {
    const elementEnd = k + 1 < plan.elements.length ? plan.startChainage[k + 1] : length;
    const pieceEnd = j + 1 < profile.startChainage.length ? profile.startChainage[j + 1] : length;
    const to = Math.min(elementEnd, pieceEnd);
    const { startCurvature, endCurvature } = plan.elements[k];
    const [b, c, d, e] = [profile.b[j], profile.c[j], profile.d[j], profile.e[j]];
    const [t0, t1] = [from - profile.startChainage[j], to - profile.startChainage[j]];
    const second = (t: number): number => Math.abs(2 * c + t * (6 * d + t * 12 * e));
    // A parabola leaves its chord by at most a quarter of its leading term times the span squared.
    const bend = Math.max(second(t0), second(t1)) + 3 * Math.abs(e) * (to - from) * (to - from);
    stretches.push({
      from,
      to,
      curvature: Math.max(Math.abs(startCurvature), Math.abs(endCurvature)),
      sharpness: Math.abs(plan.sharpness[k]),
      grade: Math.abs(b + t0 * (2 * c + t0 * (3 * d + t0 * 4 * e))) + bend * (to - from),
      bend,
      twist: Math.max(Math.abs(6 * d + 24 * e * t0), Math.abs(6 * d + 24 * e * t1)),
    });
    if (elementEnd <= to) k++;
    if (pieceEnd <= to) j++;
    from = to;
  }
  return stretches;
}
