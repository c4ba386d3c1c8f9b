import {
  centreThrow,
  endThrow,
  jointGeometry,
  leastRadiusOfWheelbase,
  lengthOverBuffers,
  newJointGeometry,
  newPlacement,
  placeCoupled,
  placeVehicle,
} from '../../core/stock/index.ts';
import type { Vehicle } from '../../core/stock/types.ts';
import { arc, makeTrack } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import type { Collection, Pair } from './collection.ts';
import type { TooLong } from './types.ts';

const placedLeading = newPlacement();
const placedTrailing = newPlacement();
const geometry = newJointGeometry();

/** Greatest angle of attack of a rigid wheelbase, rad: 12°. Source: NEM 111 (2016) par. 2.1. */
const greatestAttack = Math.PI / 15;

/** What a vehicle comes to on a curve: what it takes and what it may, angles in rad. */
type Round = Pick<TooLong, 'why' | 'value' | 'limit'>;

const goes = ({ value, limit }: Round): boolean => value <= limit;
const worse = (one: Round, other: Round): Round => (other.value / other.limit > one.value / one.limit ? other : one);

/** A level curve of one radius, m, on which two vehicles of this length, m, stand with room to spare. */
const curveOf = (radius: number, vehicleLength: number): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [arc(radius, (6 * vehicleLength) / radius)],
    profile: { points: [{ chainage: 0, height: 0 }] },
  });

/** The greater swing of a standing pair's two shanks on a curve, each against its own free swing. A pair that cannot stand there at all takes half a circle. */
function swingRound(track: Track, { leading, trailing }: Pair): Round {
  const [free, freeBehind] = [leading.rear.coupling.freeSwing, trailing.front.coupling.freeSwing];
  try {
    const chainage = track.length / 2 + lengthOverBuffers(leading) / 2;
    const behind = placeCoupled(track, leading, trailing, chainage);
    placeVehicle(track, leading, chainage, placedLeading);
    placeVehicle(track, trailing, behind, placedTrailing);
    jointGeometry(leading, trailing, placedLeading, placedTrailing, geometry);
  } catch (error) {
    if (error instanceof RangeError) return { why: 'swing', value: Math.PI, limit: Math.min(free, freeBehind) };
    throw error;
  }
  return worse(
    { why: 'swing', value: Math.abs(geometry.swingLeading), limit: free },
    { why: 'swing', value: Math.abs(geometry.swingTrailing), limit: freeBehind },
  );
}

/** What each vehicle of the collection comes to on a curve of a radius, m: its couplings' swing or, by NEM 111 (2016), its rigid wheelbase. */
function rounds({ vehicles, pairs, longest }: Collection, radius: number): readonly Round[] {
  const found = vehicles.map(({ pivotSpacing, rigidWheelbase }): Round => {
    if (!(radius > pivotSpacing / 2)) return { why: 'width', value: pivotSpacing, limit: 2 * radius };
    // The sine of the angle of attack goes as one over the radius; so small, the angle does too.
    const value = (greatestAttack * leastRadiusOfWheelbase(rigidWheelbase)) / radius;
    return { why: 'wheelbase', value, limit: greatestAttack };
  });
  const track = curveOf(radius, lengthOverBuffers(longest));
  for (const pair of pairs) {
    if (pair.stock.some((one) => found[one].why === 'width')) continue;
    const swing = swingRound(track, pair);
    for (const one of pair.stock) found[one] = worse(found[one], swing);
  }
  return found;
}

/** Vehicles of the collection that do not go round a radius, m, the longest first. */
export function tooLongFor(collection: Collection, radius: number): readonly TooLong[] {
  return rounds(collection, radius)
    .map((round, stock): TooLong => {
      const vehicle = collection.vehicles[stock];
      return { vehicle: vehicle.name, stock, length: lengthOverBuffers(vehicle), ...round };
    })
    .filter((round) => !goes(round))
    .sort((a, b) => b.length - a.length);
}

/** How far the worse end and the middle of a vehicle stand off the middle line of a curve, m; null where it does not fit. */
export function throwsRound(vehicle: Vehicle, radius: number): readonly [end: number, centre: number] | null {
  if (!(radius > vehicle.pivotSpacing / 2)) return null;
  const overhang = Math.max(vehicle.frontOverhang, vehicle.rearOverhang);
  return [endThrow(radius, vehicle.pivotSpacing, overhang), centreThrow(radius, vehicle.pivotSpacing)];
}

/** Radii are proposed in steps of this, m. */
const radiusStep = 0.005;

/** Wider than this no curve of a model railway is, m: what does not go round it goes round none. */
const widest = 100;

const known = new WeakMap<Collection, number>();

/** The least radius, m, in steps of 5 mm, that all of a collection goes round; Infinity where there is none. */
export function radiusForAll(collection: Collection): number {
  const before = known.get(collection);
  if (before !== undefined) return before;
  const allGo = (radius: number): boolean => rounds(collection, radius).every(goes);
  let [low, high] = [0, radiusStep];
  while (high < widest && !allGo(high)) [low, high] = [high, 2 * high];
  while (high - low > radiusStep / 4) {
    const middle = (low + high) / 2;
    if (allGo(middle)) high = middle;
    else low = middle;
  }
  const least = high < widest ? Math.ceil(high / radiusStep) * radiusStep : Number.POSITIVE_INFINITY;
  known.set(collection, least);
  return least;
}
