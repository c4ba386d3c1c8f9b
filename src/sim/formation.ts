import { turnVehicle } from '../core/stock/index.ts';
import type { Vehicle } from '../core/stock/types.ts';
import type { SceneTrial, TrainPlace } from '../scene/index.ts';

/** From a train's list to the order on the road: the last vehicle leads when that end goes ahead, and all face about. */
export function runningOrder(places: readonly TrainPlace[], leading: SceneTrial['leading']): Vehicle[] {
  if (leading === 'first') return places.map(({ vehicle, turned }) => (turned ? turnVehicle(vehicle) : vehicle));
  return places.map(({ vehicle, turned }) => (turned ? vehicle : turnVehicle(vehicle))).reverse();
}

/**
 * Whether a train is pushed: its driven weight lies, in the order of vehicles, behind the middle of the mass it moves.
 * A light engine, and a train without an engine, is not.
 */
export function isPropelled(vehicles: readonly Vehicle[]): boolean {
  let driven = 0;
  let drivenPlace = 0;
  let moved = 0;
  let movedPlace = 0;
  vehicles.forEach((vehicle, place) => {
    if (vehicle.drive !== null) {
      driven += vehicle.drive.drivenMass;
      drivenPlace += place * vehicle.drive.drivenMass;
    } else {
      moved += vehicle.mass;
      movedPlace += place * vehicle.mass;
    }
  });
  return driven > 0 && moved > 0 && drivenPlace / driven > movedPlace / moved;
}
