import { railAt } from '../track/index.ts';
import { drivenNormalForce } from './adhesion.ts';
import { gripShareAt, type RouteTables, tabulateRoute, VEHICLE_STRIDE } from './routeTables.ts';
import type { ForceModel, RunInput } from './types.ts';

/** Least and greatest force that each joint of a parked train may carry, N, draft positive: one entry a joint. */
export interface RestForces {
  readonly least: Float64Array;
  readonly greatest: Float64Array;
}

/** What holds one vehicle where it stands: forces N, shares of coupling forces as plain numbers. */
interface Holding {
  /** Down the grade, towards the rear positive. */
  readonly weight: number;
  /** Rolling and curve friction from rest. */
  readonly friction: number;
  /** Flange friction for each newton of both couplings together. */
  readonly flange: number;
  /** What the wheels of an engine locked by its worm hold with that net drawbar pull towards its rear. */
  grip(pull: number): number;
}

/** Reach of the tables beyond the outermost vehicle, m: some nodes, so that slopes at the ends are central ones. */
const beyond = 0.02;

/** Rounds of the balance of one vehicle; its own friction answers its coupling forces with a small share of them. */
const mostRounds = 200;

/**
 * The range of every joint's force while a train stands still with its motors off, or null when no forces hold it: then it rolls.
 *
 * What a parked train's couplings carry depends on how it came to rest: friction takes anything up to its limit, either way. Vehicle i
 * stands while |C(i-1) - C(i) - weight(i)| is within what its friction, and a worm's grip, can hold. Followed from the leading end these
 * bounds give all that a joint may carry as far as the vehicles ahead go, followed from the last vehicle all that those behind allow; as each bound is
 * an interval and the train a chain, the two together are exact. Flange friction grows with the coupling forces themselves.
 * Where the track's curvature changes under a pair, the small share of work that its lengthening takes is left out.
 *
 * @param chainages path chainage of each vehicle's origin, m, as a run records them
 * @throws RangeError when a friction grows faster than the force that it resists, so that it holds anything
 */
export function restForces(
  { path, train, options }: Pick<RunInput, 'path' | 'train' | 'options'>,
  chainages: ArrayLike<number>,
): RestForces | null {
  const { vehicles } = train;
  const sigma = vehicles.map((_, i) => railAt(path.track, chainages[i]!));
  const tables = tabulateRoute(
    path.track,
    train,
    options.forces,
    Math.min(...sigma) - beyond,
    Math.max(...sigma) + beyond,
  );
  const holdings = vehicles.map((_, i) => holdingOf(tables, train.vehicles[i]!, i, sigma[i]!, options.forces));
  const joints = vehicles.length - 1;
  const least = new Float64Array(joints).fill(Number.NEGATIVE_INFINITY);
  const greatest = new Float64Array(joints).fill(Number.POSITIVE_INFINITY);
  const meet = (joint: number, low: number, high: number) => {
    least[joint] = Math.max(least[joint]!, low);
    greatest[joint] = Math.min(greatest[joint]!, high);
  };
  // From the front: the force behind a vehicle is the one before it less weight, give or take what holds.
  let low = 0;
  let high = 0;
  for (let i = 0; i < joints; i++) {
    low = beyondVehicle(holdings[i]!, low, -1, -1);
    high = beyondVehicle(holdings[i]!, high, 1, -1);
    meet(i, low, high);
  }
  // And from the last vehicle, whose rear carries nothing.
  low = 0;
  high = 0;
  for (let i = joints; i > 0; i--) {
    low = beyondVehicle(holdings[i]!, low, -1, 1);
    high = beyondVehicle(holdings[i]!, high, 1, 1);
    meet(i - 1, low, high);
  }
  const stands =
    joints === 0
      ? Math.abs(holdings[0]!.weight) <= holdings[0]!.friction + holdings[0]!.grip(0)
      : least.every((one, j) => one <= greatest[j]!);
  return stands ? { least, greatest } : null;
}

/**
 * Greatest (`way` 1) or least (-1) force at one end of a vehicle that holds still, with the force at the other end given, N. `weightWay` is -1 from the
 * front end to the rear, 1 from the rear to the front: up the grade the weight behind is added.
 */
function beyondVehicle(
  { weight, friction, flange, grip }: Holding,
  given: number,
  way: 1 | -1,
  weightWay: 1 | -1,
): number {
  let force = given;
  for (let round = 0; round < mostRounds; round++) {
    // Net drawbar pull towards the rear: the force behind less the force ahead.
    const pull = weightWay < 0 ? force - given : given - force;
    const next = given + weightWay * weight + way * (friction + flange * Math.abs(given + force) + grip(pull));
    if (Math.abs(next - force) <= 1e-14 * (1 + Math.abs(next))) return next;
    force = next;
  }
  throw new RangeError('Friction on a vehicle grows as fast as the coupling force it resists: it would hold anything.');
}

function holdingOf(
  tables: RouteTables,
  { mass, rolling, drive }: RunInput['train']['vehicles'][number],
  i: number,
  sigma: number,
  { gravity, flangeFriction }: ForceModel,
): Holding {
  const x = (sigma - tables.origin) / tables.node;
  const k = Math.floor(x);
  const row = tables.vehicleAt[i]! + k * VEHICLE_STRIDE;
  const value = (column: number): number => {
    const from = tables.vehicle[row + column]!;
    return from + (tables.vehicle[row + VEHICLE_STRIDE + column]! - from) * (x - k);
  };
  const cosine = value(1);
  const share = gripShareAt(tables, i, sigma);
  return {
    weight: mass * gravity * value(0),
    friction: mass * gravity * (cosine * rolling.coulomb + value(2)) * rolling.breakaway,
    flange: flangeFriction * value(3),
    grip: (pull) => (drive?.worm ? drive.adhesion * drivenNormalForce(drive, gravity * cosine * share, pull) : 0),
  };
}
