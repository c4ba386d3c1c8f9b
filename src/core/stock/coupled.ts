import type { Track } from '../track/types.ts';
import { referenceSpacing } from './joint.ts';
import { jointGeometry, newJointGeometry } from './jointGeometry.ts';
import { newPlacement, placeVehicle } from './placement.ts';
import type { Vehicle } from './types.ts';

/**
 * How far the pin distance may stay from what is asked, m: ten times the tolerance of the placements it is made of, plus
 * what coordinates far from the room's origin lose to rounding.
 */
const pinTolerance = 1e-12;
const roundingOfCoordinates = 64 * Number.EPSILON;

/** The rule converges in 3 to 5 turns on any track the pair fits on. */
const mostTurns = 40;

/** Overwritten by every call before they are read. */
const placedLeading = newPlacement();
const placedTrailing = newPlacement();
const geometry = newJointGeometry();

/**
 * Chainage (m) at which `trailing` stands coupled behind `leading` at `chainage`, with the pivots apart by the joint's
 * free length, guides led out as they are there, plus `extension` (m) in space. Throws RangeError when no place does that. Solved by the secant rule, the
 * first step taken from straight track.
 */
export function placeCoupled(
  track: Track,
  leading: Vehicle,
  trailing: Vehicle,
  chainage: number,
  extension = 0,
): number {
  const wanted = leading.rear.coupling.reach + trailing.front.coupling.reach + extension;
  placeVehicle(track, leading, chainage, placedLeading);
  const missAt = (s: number): number => {
    placeVehicle(track, trailing, s, placedTrailing);
    jointGeometry(leading, trailing, placedLeading, placedTrailing, geometry);
    return geometry.pinDistance - geometry.lengthening - wanted;
  };
  const { origin } = placedLeading;
  const tolerance =
    pinTolerance + roundingOfCoordinates * (Math.abs(origin[0]) + Math.abs(origin[1]) + Math.abs(origin[2]));
  let before = chainage - referenceSpacing(leading, trailing) - extension;
  let missBefore = missAt(before);
  if (Math.abs(missBefore) <= tolerance) return before;
  // Pulling the trailing vehicle back by a little lengthens the joint by about as much.
  let now = before + missBefore;
  for (let turn = 0; turn < mostTurns; turn++) {
    const miss = missAt(now);
    if (Math.abs(miss) <= tolerance) return now;
    const change = miss - missBefore;
    if (change === 0) break;
    const next = now - (miss * (now - before)) / change;
    before = now;
    missBefore = miss;
    if (next === now) return now;
    now = next;
  }
  throw new RangeError(
    `${trailing.name} cannot be coupled behind ${leading.name} at chainage ${chainage.toFixed(3)} m with ${wanted.toFixed(4)} m between pivots`,
  );
}

/**
 * Chainages (m) of all vehicles of a standing train whose first vehicle's origin is at `chainage`, every joint at its
 * free length plus `extension` (m).
 */
export function standTrain(track: Track, vehicles: readonly Vehicle[], chainage: number, extension = 0): Float64Array {
  const chainages = new Float64Array(vehicles.length);
  chainages[0] = chainage;
  for (let i = 1; i < vehicles.length; i++) {
    chainages[i] = placeCoupled(track, vehicles[i - 1], vehicles[i], chainages[i - 1], extension);
  }
  return chainages;
}
