import { atan2 } from '../../core/math/index.ts';
import { jointGeometry, newJointGeometry, newPlacement, placeCoupled, placeVehicle } from '../../core/stock/index.ts';
import type { Vehicle } from '../../core/stock/types.ts';
import {
  arc,
  type LaidEasement,
  laidEasement,
  makeTrack,
  straight,
  trackPoint,
  transition,
} from '../../core/track/index.ts';
import type { PlanElement, Track } from '../../core/track/types.ts';

/** How a straight goes over into a curve. */
export type EasementKind = 'none' | 'clothoid' | LaidEasement;

/** What an easement does for a string of like vehicles; SI. */
export interface EasementMeasure {
  readonly kind: EasementKind;
  /** m; of cubic and lath along the straight. */
  readonly length: number;
  /** How far the arc moves aside, and how much sooner the straight ends, m: the room it takes. */
  readonly shift: number;
  readonly ahead: number;
  /** Greatest sideways offset of facing buffer heads, m; NaN without buffers. Greatest swing of a coupling against its body, rad. */
  readonly buffers: number;
  readonly swing: number;
  /**
   * Greatest v³·|dκ/ds|, m/s³, κ the curvature of the way of a body, that is the turning of its chord over the way made: what a passenger at
   * the middle feels change. Without an easement it is finite, because a body takes its own length to turn.
   */
  readonly jerk: number;
}

export type Layout = 's-bend' | 'curve-exit';

export interface EasementCase {
  readonly layout: Layout;
  readonly vehicle: Vehicle;
  readonly count: number;
  /** m, rad of every bend, m/s. */
  readonly radius: number;
  readonly angle: number;
  readonly speed: number;
}

/** Way between the places at which the string stands, m; and the way over which curvature is told, m. */
const step = 0.005;

/** Straight before and after, m: longer than the string is not needed, its way through the bend is. */
const lead = 2;

/** What an easement comes to, found by standing the string, stretched at free length, every 5 mm. Throws RangeError where the bend is too small for it. */
export function measureEasement(given: EasementCase, kind: EasementKind, length: number): EasementMeasure {
  const { vehicle, count, radius, angle, layout, speed } = given;
  const eased = easedElements(kind, length, radius);
  const bend = bendOf(eased, radius, angle);
  const whole = layout === 's-bend' ? [...bend, ...bend.map(mirrored)] : bend;
  const track = trackOf([straight(lead), ...whole, straight(lead)]);
  const places = Array.from({ length: count }, newPlacement);
  const joint = newJointGeometry();
  let [buffers, swing, jerk] = [vehicle.front.buffers === null ? Number.NaN : 0, 0, 0];
  const headings: number[] = [];
  const string = count * (vehicle.bodyLength + 0.02);
  for (let s = string; s < track.length; s += step) {
    let at = s;
    for (let i = 0; i < count; i++) {
      if (i > 0) at = placeCoupled(track, vehicle, vehicle, at);
      placeVehicle(track, vehicle, at, places[i]);
    }
    headings.push(atan2(places[0].ahead[1], places[0].ahead[0]));
    for (let i = 0; i + 1 < count; i++) {
      jointGeometry(vehicle, vehicle, places[i], places[i + 1], joint);
      buffers = Math.max(buffers, Math.abs(joint.bufferLateral[0]), Math.abs(joint.bufferLateral[1]));
      swing = Math.max(swing, Math.abs(joint.swingLeading), Math.abs(joint.swingTrailing));
    }
  }
  for (let k = 2; k < headings.length; k++) {
    const change = (turn(headings[k - 1], headings[k]) - turn(headings[k - 2], headings[k - 1])) / (step * step);
    jerk = Math.max(jerk, speed * speed * speed * Math.abs(change));
  }
  return { kind, length, ...roomOf(eased, radius), buffers, swing, jerk };
}

/** From a straight to the radius, to the left. */
function easedElements(kind: EasementKind, length: number, radius: number): PlanElement[] {
  if (kind === 'none') return [];
  return kind === 'clothoid' ? [transition(length, 0, 1 / radius)] : laidEasement(kind, length, radius);
}

/** A bend eased alike at both ends, to the left through `angle`. */
function bendOf(eased: readonly PlanElement[], radius: number, angle: number): PlanElement[] {
  const turned = eased.reduce((sum, one) => sum + (one.length * (one.startCurvature + one.endCurvature)) / 2, 0);
  const rest = angle - 2 * turned;
  if (rest < 0) throw new RangeError(`A bend of ${angle.toFixed(3)} rad is all used up by easements.`);
  const back = eased.map((one) => ({ ...one, startCurvature: one.endCurvature, endCurvature: one.startCurvature }));
  return [...eased, arc(radius, rest), ...back.reverse()];
}

const mirrored = (one: PlanElement): PlanElement => ({
  ...one,
  startCurvature: -one.startCurvature,
  endCurvature: -one.endCurvature,
});

const trackOf = (elements: readonly PlanElement[]): Track =>
  makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements, profile: { points: [{ chainage: 0, height: 0 }] } });

/** How far aside the circle is moved, and how far before the place where it is nearest the straight ends: seen a quarter turn on. */
function roomOf(eased: readonly PlanElement[], radius: number): { shift: number; ahead: number } {
  if (eased.length === 0) return { shift: 0, ahead: 0 };
  const track = trackOf(eased);
  const { heading } = trackPoint(track, track.length);
  const round = trackOf([...eased, arc(radius, Math.PI / 2 - heading)]);
  const quarter = trackPoint(round, round.length);
  return { shift: quarter.y - radius, ahead: quarter.x - radius };
}

/** From one direction to the next, rad. */
const turn = (from: number, to: number): number => {
  const by = to - from;
  return by > Math.PI ? by - 2 * Math.PI : by < -Math.PI ? by + 2 * Math.PI : by;
};
