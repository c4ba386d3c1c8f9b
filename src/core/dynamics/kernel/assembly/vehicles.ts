/*
 * Coulomb friction of the vehicles without a motor: which way it acts, and whether it holds. It acts on the speed at the
 * step's end, so that a vehicle is at rest there or is not. All in the frame of the vehicle's own lane.
 */
import { FREE, Half, halfAt, outerOf, Train, vehicleAt } from './train';

/** Coupling forces and grade on a vehicle, the way its lane counts, N. */
export function chainForce(half: Half): f64 {
  const outer = outerOf(half);
  return outer.rear * outer.force - half.front * half.force - half.grade;
}

/** Friction of the flange from the coupling forces at both ends, N. */
export function flangeForce(half: Half): f64 {
  return half.flange * Math.abs(outerOf(half).force + half.force);
}

/** Level of Coulomb friction in motion: rolling, curve and flange, N. */
export function frictionOf(half: Half): f64 {
  return half.rolling + half.curve + flangeForce(half);
}

/** Brings a vehicle to rest within this step, and holds it from then on. */
export function rest(train: Train, half: Half): void {
  half.free = 0;
  half.booked = 0;
  half.fixed = 0.5 * half.startSpeed;
  half.slide = 0;
  train.resting++;
}

/** Lets a vehicle go, its friction against `slide`. */
export function release(half: Half, slide: f64): void {
  half.free = FREE;
  half.booked = FREE;
  half.fixed = 0;
  half.slide = slide;
}

/**
 * Checks the vehicles' friction against the solution of a sweep: held ones can be held, sliding ones still slide their
 * way. True when all had been right; wrong ones are changed, at most one when `single`.
 */
export function settleVehicles(train: Train, single: bool): bool {
  let settled = true;
  for (let i = 0; i < train.count; i++) {
    const vehicle = vehicleAt(train, i);
    if (vehicle.kind !== 0) continue;
    const half = halfAt(train, i);
    const v0 = half.startSpeed;
    if (half.free) {
      if ((2 * half.mean - v0) * half.slide < 0 && frictionOf(half) > 0) {
        rest(train, half);
        settled = false;
      }
    } else {
      const net = chainForce(half) + 0.5 * half.inertia * v0;
      const dry = (half.rolling + half.curve) * (v0 === 0 ? vehicle.breakaway : 1);
      if (Math.abs(net) > dry + flangeForce(half)) {
        release(half, net > 0 ? 1 : -1);
        train.resting--;
        settled = false;
      }
    }
    if (single && !settled) break;
  }
  return settled;
}

/** After a step: books the friction that brought vehicles to rest within it, and stands them still. */
export function standStill(train: Train): void {
  let work: f64 = 0;
  for (let i = 0; i < train.count; i++) {
    if (vehicleAt(train, i).kind !== 0) continue;
    const half = halfAt(train, i);
    if (half.free || half.fixed === 0) continue;
    const v0 = 2 * half.fixed;
    work += (chainForce(half) + 0.5 * half.inertia * v0) * half.fixed * train.step;
    half.speed = 0;
    half.fixed = 0;
  }
  train.rolling = f64x2.replace_lane(train.rolling, 0, f64x2.extract_lane(train.rolling, 0) + work);
}
