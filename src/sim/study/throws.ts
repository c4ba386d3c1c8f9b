import { cos, sin } from '../../core/math/index.ts';
import { frontReach, newPlacement, placeVehicle, pointOnVehicle, rearReach } from '../../core/stock/index.ts';
import type { Vehicle } from '../../core/stock/types.ts';
import { type Track, type TrackPoint, trackPoint } from '../../core/track/index.ts';

/** How far the middle line of a body stands off the middle of the track at most, m: at its ends, and between its running points. */
export interface Throws {
  readonly end: number;
  readonly centre: number;
}

/** Way between the places a vehicle is stood at, m: a throw changes over no less than a body's length. */
const every = 0.02;

/** Greatest throws of any of some vehicles anywhere between two path chainages, m, that their middles go over. */
export function throwsOf(track: Track, vehicles: readonly Vehicle[], from: number, to: number): Throws {
  const kinds = new Map(vehicles.map((one) => [[one.pivotSpacing, frontReach(one), rearReach(one)].join(), one]));
  const placed = newPlacement();
  const point: [number, number, number] = [0, 0, 0];
  let here: TrackPoint | undefined;
  let [end, centre] = [0, 0];
  /** Distance of a place on the body, `ahead` of its middle, from the track beside it. */
  const aside = (chainage: number, ahead: number): number => {
    here = trackPoint(track, chainage, here);
    pointOnVehicle(placed, ahead, 0, 0, point);
    const [cosine, sine] = [cos(here.heading), sin(here.heading)];
    const along = (point[0] - here.x) * cosine + (point[1] - here.y) * sine;
    const left = (point[1] - here.y) * cosine - (point[0] - here.x) * sine;
    // The place's own foot lies a little further along the curve; its distance there, to the second order.
    return Math.abs(left - (here.curvature * along * along) / (2 * (1 - here.curvature * left)));
  };
  for (const vehicle of kinds.values()) {
    const [front, rear] = [frontReach(vehicle), rearReach(vehicle)];
    const low = Math.max(from, rear);
    const high = Math.min(to, track.length - front);
    const steps = Math.max(1, Math.ceil((high - low) / every));
    for (let k = 0; k <= steps && low <= high; k++) {
      const chainage = low + ((high - low) * k) / steps;
      placeVehicle(track, vehicle, chainage, placed);
      const stretch = (placed.frontChainage - placed.rearChainage) / vehicle.pivotSpacing;
      centre = Math.max(centre, aside(chainage, 0));
      end = Math.max(end, aside(chainage + front * stretch, front), aside(chainage - rear * stretch, -rear));
    }
  }
  return { end, centre };
}
