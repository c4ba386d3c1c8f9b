import { atan2, cos, hypot, sin } from '../../core/math/index.ts';
import { connectPoses, easement, type Pose } from '../../core/track/index.ts';
import type { PlanElement } from '../../core/track/types.ts';
import { elementLengthMm } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneElement, SceneTrack } from '../schema/trackSchema.ts';
import { splicedFates } from './chainageMap.ts';
import { cornerRun, poseAt } from './cornerRun.ts';
import { elementName, trackOf } from './parts.ts';
import { sceneElement } from './planElements.ts';
import { putAlignment } from './putTrack.ts';
import { shortestMm, sized } from './sized.ts';
import { mmText, tidy } from './tidy.ts';

/** A place in the room, mm. */
export interface RoomPlace {
  readonly xMm: number;
  readonly yMm: number;
}

/** The bend that new track is laid with. */
export interface NewBend {
  readonly radiusMm: number;
  /** Of each easement; 0 for none. */
  readonly easeMm: number;
}

/** A bend and a straight from a place and direction to a point: how far the bend turns (rad, left positive) and how long the straight is, m. */
interface Reach {
  readonly turn: number;
  readonly straight: number;
}

/**
 * A bend of `radius`, eased by `easeIn` and `easeOut` (m), from a pose, and the straight on from it that ends at a point: the arc belongs to a circle that
 * the straight touches at radius and shift, so it is the tangent from the point to that circle. Throws RangeError that says what is short.
 */
function reachPoint(
  from: Pose,
  [x, y]: readonly [number, number],
  { radius, easeIn, easeOut }: { readonly radius: number; readonly easeIn: number; readonly easeOut: number },
): Reach {
  const none = { angle: 0, shift: 0, shiftAt: 0 };
  const into = easeIn > 0 ? easement(radius, easeIn) : none;
  const out = easeOut > 0 ? easement(radius, easeOut) : none;
  const aside = (y - from.y) * cos(from.heading) - (x - from.x) * sin(from.heading);
  const hand = aside >= 0 ? 1 : -1;
  const off = hand * (radius + into.shift);
  const cx = from.x + into.shiftAt * cos(from.heading) - off * sin(from.heading);
  const cy = from.y + into.shiftAt * sin(from.heading) + off * cos(from.heading);
  const apart = hypot(cx - x, cy - y);
  const touching = radius + out.shift;
  if (apart < touching) {
    throw new RangeError(
      `This end lies ${mmText((touching - apart) * 1000)} inside the bend of ${mmText(radius * 1000)}: further out, or a smaller radius.`,
    );
  }
  const tangent = Math.sqrt((apart - touching) * (apart + touching));
  const straight = tangent - out.shiftAt;
  if (straight * 1000 < shortestMm) {
    throw new RangeError(`There are ${mmText(shortestMm - straight * 1000)} too few for the easement out of the bend.`);
  }
  const heading = atan2(cy - y, cx - x) - hand * atan2(touching, -tangent);
  const turned = hand * (heading - from.heading);
  const turn = turned - 2 * Math.PI * Math.floor(turned / (2 * Math.PI));
  const left = turn - into.angle - out.angle;
  if (left * radius * 1000 < shortestMm) {
    throw new RangeError(
      `The easements turn ${Math.round((-left * 1800) / Math.PI) / 10}° further than the bend would: further aside, or shorter easements.`,
    );
  }
  return { turn: hand * turn, straight };
}

/**
 * The scene with the end of a track moved to a place: a last bend and straight turn and stretch to reach it, a straight with nothing before it that bends
 * only stretches. Throws RangeError that says what cannot be met and by how much.
 */
export function moveEnd(scene: Scene, trackId: string, to: RoomPlace): Scene {
  const track = trackOf(scene, trackId);
  const { alignment } = track;
  const last = alignment.length - 1;
  const run = alignment[last].kind === 'straight' ? cornerRun(scene, track, last) : null;
  const corner = run?.corners.at(-1);
  if (run === null || corner === undefined) {
    const pose = poseAt(scene, track, last);
    const lengthMm = (to.xMm - pose.x * 1000) * cos(pose.heading) + (to.yMm - pose.y * 1000) * sin(pose.heading);
    if (alignment[last].kind !== 'straight') throw new RangeError(`${elementName(track, last)} is not straight.`);
    if (lengthMm < shortestMm) throw new RangeError(`${elementName(track, last)} has no length left.`);
    const fates = splicedFates(last + 1, last, 0, 0);
    return putAlignment(scene, trackId, alignment.with(last, sized(alignment[last], lengthMm)), fates);
  }
  const bend = run.bends[run.bends.length - 1];
  const first = corner.into ?? corner.arc;
  const { turn, straight } = reachPoint(poseAt(scene, track, first), [to.xMm / 1000, to.yMm / 1000], bend);
  const arc = alignment[corner.arc] as Extract<SceneElement, { kind: 'arc' }>;
  const eased = (bend.easeIn + bend.easeOut) / 2;
  const next = [...alignment];
  next[corner.arc] = sized(
    { ...arc, turn: turn > 0 ? 'left' : 'right' },
    (Math.abs(turn) * bend.radius - eased) * 1000,
  );
  for (const side of [corner.into, corner.out]) {
    if (side === null) continue;
    const { from: _from, to: _to, ...open } = next[side] as Extract<SceneElement, { kind: 'transition' }>;
    next[side] = open;
  }
  next[last] = sized(next[last], straight * 1000);
  return putAlignment(scene, trackId, next, splicedFates(next.length, 0, 0, 0));
}

/**
 * The scene with new track laid on from the end of a track to a place: straight on where the place lies within `tangentDeg` of its direction, else a bend with its
 * easements and a straight. Throws RangeError that says what cannot be met and by how much.
 */
export function extendTrack(scene: Scene, trackId: string, to: RoomPlace, bend: NewBend, tangentDeg = 0): Scene {
  const track = trackOf(scene, trackId);
  const pose = poseAt(scene, track, track.alignment.length);
  const [x, y] = [to.xMm / 1000 - pose.x, to.yMm / 1000 - pose.y];
  const ahead = x * cos(pose.heading) + y * sin(pose.heading);
  const aside = y * cos(pose.heading) - x * sin(pose.heading);
  if (Math.abs(atan2(aside, ahead)) <= (tangentDeg * Math.PI) / 180 + 1e-9) {
    return appended(scene, track, [{ kind: 'straight', lengthMm: tidy(ahead * 1000) }]);
  }
  const [radius, ease] = [bend.radiusMm / 1000, bend.easeMm / 1000];
  const { turn, straight } = reachPoint(pose, [to.xMm / 1000, to.yMm / 1000], { radius, easeIn: ease, easeOut: ease });
  const arc = {
    kind: 'arc' as const,
    radiusMm: bend.radiusMm,
    turn: turn > 0 ? ('left' as const) : ('right' as const),
    angleDeg: tidy(((Math.abs(turn) - ease / radius) * 180) / Math.PI),
  };
  const easing: SceneElement[] = bend.easeMm > 0 ? [{ kind: 'transition', lengthMm: bend.easeMm }] : [];
  return appended(scene, track, [...easing, arc, ...easing, { kind: 'straight', lengthMm: tidy(straight * 1000) }]);
}

/**
 * The scene with new track laid on from the end of a track so that it ends at a place in a direction, by the shortest way of straights and bends.
 * Throws RangeError when no way fits this radius and these easements, or none that turns no further than `mostTurn`, rad.
 */
export function extendToPose(
  scene: Scene,
  trackId: string,
  to: RoomPlace & { readonly headingDeg: number },
  bend: NewBend,
  mostTurn = Number.POSITIVE_INFINITY,
): Scene {
  const track = trackOf(scene, trackId);
  const pose = poseAt(scene, track, track.alignment.length);
  const goal = { x: to.xMm / 1000, y: to.yMm / 1000, heading: (to.headingDeg * Math.PI) / 180 };
  const ways = connectPoses(pose, goal, { radius: bend.radiusMm / 1000, easement: bend.easeMm / 1000, straight: 0 });
  const way = ways.find(({ elements }) => turning(elements) <= mostTurn);
  if (way === undefined) {
    throw new RangeError(`No way of bends of ${mmText(bend.radiusMm)} and straights leads there in that direction.`);
  }
  return appended(
    scene,
    track,
    way.elements.filter(({ length }) => length * 1000 >= shortestMm / 1000).map(sceneElement),
  );
}

/**
 * The scene with a track laid straight on from its end by a length (mm), or with as much of its last straight taken back; a straight that this uses up goes.
 * What lies on the track keeps its place. Throws RangeError in words.
 */
export function layStraightOn(scene: Scene, trackId: string, byMm: number): Scene {
  const track = trackOf(scene, trackId);
  if (byMm >= 0) return appended(scene, track, [{ kind: 'straight', lengthMm: tidy(byMm) }]);
  const { alignment } = track;
  const last = alignment.length - 1;
  const straight = alignment[last];
  if (straight.kind !== 'straight') {
    throw new RangeError(`No straight is left at the end: ${elementName(track, last)} is changed at its own end.`);
  }
  const lengthMm = straight.lengthMm + byMm;
  if (lengthMm >= shortestMm) {
    return putAlignment(scene, trackId, alignment.with(last, sized(straight, lengthMm)), 'in-place');
  }
  if (last === 0) throw new RangeError(`${elementName(track, last)} is all there is of ${track.name}.`);
  return putAlignment(scene, trackId, alignment.slice(0, -1), 'in-place');
}

/**
 * The scene with the end of a track bent further by an angle (degrees, left positive): a curve that it ends with turns on or back, and is gone with its easements
 * when nothing is left of it; after a straight a new bend begins, with its easements and the least whole multiple of the angle that they leave room for. What
 * lies on the track keeps its place. Throws RangeError in words.
 */
export function bendOn(scene: Scene, trackId: string, byDeg: number, bend: NewBend): Scene {
  const track = trackOf(scene, trackId);
  const { alignment } = track;
  const last = alignment.length - 1;
  const at = alignment[last].kind === 'transition' ? last - 1 : last;
  const curve = alignment[at];
  if (curve !== undefined && 'radiusMm' in curve) {
    const by = curve.turn === 'left' ? byDeg : -byDeg;
    const lengthMm = elementLengthMm(curve) + (by * Math.PI * curve.radiusMm) / 180;
    if (lengthMm >= shortestMm) {
      return putAlignment(scene, trackId, alignment.with(at, sized(curve, lengthMm)), 'in-place');
    }
    // An easement out of an earlier curve belongs to that one.
    const eased = alignment[at - 1]?.kind === 'transition' && alignment[at - 2]?.kind === 'straight';
    const rest = alignment.slice(0, eased ? at - 1 : at);
    if (rest.length === 0) throw new RangeError(`${elementName(track, at)} is all there is of ${track.name}.`);
    return putAlignment(scene, trackId, rest, 'in-place');
  }
  const degrees = (mm: number): number => (mm * 180) / (Math.PI * bend.radiusMm);
  const eased = degrees(bend.easeMm);
  const step = Math.abs(byDeg);
  const turned = step * Math.ceil((eased + degrees(shortestMm)) / step);
  const easing: SceneElement[] = bend.easeMm > 0 ? [{ kind: 'transition', lengthMm: bend.easeMm }] : [];
  const arc: SceneElement = {
    kind: 'arc',
    radiusMm: bend.radiusMm,
    turn: byDeg > 0 ? 'left' : 'right',
    angleDeg: tidy(turned - eased),
  };
  return appended(scene, track, [...easing, arc, ...easing]);
}

/** How far elements turn altogether, whichever way, rad. */
const turning = (elements: readonly PlanElement[]): number =>
  elements.reduce(
    (sum, { length, startCurvature, endCurvature }) => sum + (length * Math.abs(startCurvature + endCurvature)) / 2,
    0,
  );

/** More elements at the end; a straight that goes on straight makes the last one longer. */
function appended(scene: Scene, track: SceneTrack, more: readonly SceneElement[]): Scene {
  const { alignment } = track;
  const last = alignment[alignment.length - 1];
  const [first, ...rest] = more;
  if (first === undefined) throw new RangeError('There is nothing to lay.');
  if (first.kind === 'straight' && !(first.lengthMm >= shortestMm))
    throw new RangeError('Nothing can be laid backwards.');
  const joined = first.kind === 'straight' && last.kind === 'straight';
  const next = joined
    ? [...alignment.slice(0, -1), sized(last, last.lengthMm + first.lengthMm), ...rest]
    : [...alignment, ...more];
  // What lies on the last straight keeps its place: only track that was not there is new.
  return putAlignment(scene, track.id, next, 'in-place');
}
