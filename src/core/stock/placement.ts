import { cos, sin } from '../math/index.ts';
import { newTrackPoint, trackPoint } from '../track/index.ts';
import type { Track } from '../track/types.ts';
import type { Placement, Vehicle } from './types.ts';

/**
 * How far the distance between the running points may stay from the pivot spacing, m: a tenth of a picometre, plus what
 * coordinates far from the room's origin lose to rounding (two points of three coordinates, a few roundings each).
 */
const chordTolerance = 1e-13;
const roundingOfCoordinates = 16 * Number.EPSILON;

/**
 * Most chainage between running points, as a multiple of their distance: half a circle on its diameter. A vehicle that needs more is longer
 * than the curve is wide, and what Newton would find beyond is a place round the next bend.
 */
const mostArcPerChord = Math.PI / 2;

/** Newton needs 2 or 3 turns on any track a vehicle fits; bisection of the same bracket about 50. */
const mostTurns = 80;

/** Overwritten by every call before it is read, so that placing a vehicle allocates nothing. */
const front = newTrackPoint();
const rear = newTrackPoint();

/** A placement with every field present and nothing in it, to be reused as `out`. */
export const newPlacement = (): Placement => ({
  chainage: 0,
  frontChainage: 0,
  rearChainage: 0,
  origin: [0, 0, 0],
  ahead: [1, 0, 0],
  left: [0, 1, 0],
  up: [0, 0, 1],
  frontTangent: [1, 0, 0],
  rearTangent: [1, 0, 0],
  roll: 0,
  twist: 0,
});

/**
 * Stands a vehicle on a track so that both running points lie on the centreline, exactly its pivot spacing apart in
 * space, with `chainage` (m) midway between their chainages. Returns `out`. Throws RangeError when the vehicle is longer
 * between its running points than the curve is wide. Source: the chord condition |P(s+δ) - P(s-δ)| = b, solved by Newton's method
 * kept inside a bracket. On canted track the body rolls about its axis by the mean cant of its running points.
 */
export function placeVehicle(
  track: Track,
  vehicle: Vehicle,
  chainage: number,
  out: Placement = newPlacement(),
): Placement {
  const spacing = vehicle.pivotSpacing;
  let low = 0;
  let high = (spacing / 2) * mostArcPerChord * (1 + Number.EPSILON);
  let half = spacing / 2;
  let cosFront = 1;
  let sinFront = 0;
  let cosRear = 1;
  let sinRear = 0;
  let dx = 0;
  let dy = 0;
  let dz = 0;
  let chord = 0;
  for (let turn = 0; ; turn++) {
    trackPoint(track, chainage + half, front);
    trackPoint(track, chainage - half, rear);
    cosFront = cos(front.heading);
    sinFront = sin(front.heading);
    cosRear = cos(rear.heading);
    sinRear = sin(rear.heading);
    dx = front.x - rear.x;
    dy = front.y - rear.y;
    dz = front.z - rear.z;
    chord = Math.sqrt(dx * dx + dy * dy + dz * dz);
    const miss = chord - spacing;
    const tolerance =
      chordTolerance + roundingOfCoordinates * (Math.abs(front.x) + Math.abs(front.y) + Math.abs(front.z));
    if (miss <= tolerance && miss >= -tolerance) break;
    if (miss < 0) low = half;
    else high = half;
    if (turn === mostTurns || high - low <= Number.EPSILON * half) throw standsNowhere(vehicle, chainage);
    // d(chord)/dδ: both ends move along their tangents, away from each other.
    const slope = (dx * (cosFront + cosRear) + dy * (sinFront + sinRear) + dz * (front.grade + rear.grade)) / chord;
    const newton = half - miss / slope;
    if (slope > 0 && newton > low && newton < high) half = newton;
    else half = (low + high) / 2;
  }

  out.chainage = chainage;
  out.frontChainage = chainage + half;
  out.rearChainage = chainage - half;
  out.origin[0] = (front.x + rear.x) / 2;
  out.origin[1] = (front.y + rear.y) / 2;
  out.origin[2] = (front.z + rear.z) / 2;
  const ax = dx / chord;
  const ay = dy / chord;
  const az = dz / chord;
  const level = Math.sqrt(ax * ax + ay * ay);
  out.ahead[0] = ax;
  out.ahead[1] = ay;
  out.ahead[2] = az;
  out.left[0] = -ay / level;
  out.left[1] = ax / level;
  out.left[2] = 0;
  out.up[0] = (-az * ax) / level;
  out.up[1] = (-az * ay) / level;
  out.up[2] = level;
  out.roll = (front.cant + rear.cant) / 2;
  out.twist = front.cant - rear.cant;
  if (out.roll !== 0) rollBody(out);
  writeTangent(cosFront, sinFront, front.grade, out.frontTangent);
  writeTangent(cosRear, sinRear, rear.grade, out.rearTangent);
  return out;
}

/** Turns left and up about the body's axis: a positive roll lowers the left side. */
function rollBody({ roll, left, up }: Placement): void {
  const c = cos(roll);
  const s = sin(roll);
  for (let i = 0; i < 3; i++) {
    const l = left[i];
    const u = up[i];
    left[i] = c * l - s * u;
    up[i] = c * u + s * l;
  }
}

const standsNowhere = (vehicle: Vehicle, chainage: number): RangeError =>
  new RangeError(
    `${vehicle.name} cannot stand at chainage ${chainage.toFixed(3)} m: its running points are ${vehicle.pivotSpacing.toFixed(4)} m apart, more than the curve there is wide`,
  );

function writeTangent(cos: number, sin: number, grade: number, out: [number, number, number]): void {
  const scale = 1 / Math.sqrt(1 + grade * grade);
  out[0] = cos * scale;
  out[1] = sin * scale;
  out[2] = grade * scale;
}

/** Where a point of the body, given in its own axes (m from the origin at rail level), is in the room (m). */
export function pointOnVehicle(
  placement: Placement,
  ahead: number,
  left: number,
  up: number,
  out: [number, number, number] = [0, 0, 0],
): [number, number, number] {
  const { origin, ahead: a, left: l, up: u } = placement;
  out[0] = origin[0] + ahead * a[0] + left * l[0] + up * u[0];
  out[1] = origin[1] + ahead * a[1] + left * l[1] + up * u[1];
  out[2] = origin[2] + ahead * a[2] + left * l[2] + up * u[2];
  return out;
}
