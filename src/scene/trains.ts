import type { Vehicle } from '../core/stock/types.ts';
import type { Scene } from './schema/schema.ts';
import type { SceneTrain } from './schema/trialSchema.ts';
import { vehicleOf } from './vehicles.ts';

/** One vehicle of a train, counts written out, from the end called "first" to the end called "last". */
export interface TrainPlace {
  /** Index of the entry in the file's list. */
  readonly entry: number;
  readonly vehicle: Vehicle;
  /** Its front faces the end called "last". */
  readonly turned: boolean;
}

/** The vehicles of a train in SI in the file's order. Entries whose stock is not there are left out. */
export function trainPlaces(scene: Scene, train: SceneTrain): readonly TrainPlace[] {
  const places: TrainPlace[] = [];
  train.vehicles.forEach((entry, index) => {
    const file = scene.stock.find((one) => one.id === entry.stock);
    if (file === undefined) return;
    const vehicle = vehicleOf(scene, file, entry);
    for (let k = 0; k < (entry.count ?? 1); k++) places.push({ entry: index, vehicle, turned: entry.turned ?? false });
  });
  return places;
}

/** Length of a train standing stretched at free length on straight track, between its outermost body ends, m. */
export function trainLength(places: readonly TrainPlace[]): number {
  let length = 0;
  places.forEach(({ vehicle, turned }, index) => {
    length += vehicle.bodyLength;
    const towardsFirst = turned ? vehicle.rear : vehicle.front;
    const towardsLast = turned ? vehicle.front : vehicle.rear;
    if (index > 0) length += towardsFirst.coupling.reach - towardsFirst.coupling.pivotInset;
    if (index < places.length - 1) length += towardsLast.coupling.reach - towardsLast.coupling.pivotInset;
  });
  return length;
}
