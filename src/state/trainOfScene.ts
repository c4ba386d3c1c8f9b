import type { Vehicle } from '../core/stock/types.ts';
import { type Scene, trainLength, trainPlaces } from '../scene/index.ts';

/** Vehicles of one kind that follow each other. */
export interface VehicleGroup {
  readonly vehicle: Vehicle;
  readonly count: number;
  /** Number of the first of them, counted from 1. */
  readonly from: number;
}

/** A train in SI from the end called "first" to the end called "last". */
export interface TrainOfScene {
  readonly name: string;
  readonly vehicles: readonly Vehicle[];
  readonly groups: readonly VehicleGroup[];
  /** Coupled up and stretched on straight track, m. */
  readonly length: number;
}

/** One train of a scene with its vehicles written out and, of neighbours that the file gives as one entry, grouped. */
export function trainOfScene(scene: Scene, trainId: string): TrainOfScene | null {
  const train = scene.trains.find(({ id }) => id === trainId);
  if (!train) return null;
  const places = trainPlaces(scene, train);
  const groups: VehicleGroup[] = [];
  places.forEach(({ entry, vehicle }, index) => {
    const before = groups.at(-1);
    if (before && places[index - 1].entry === entry) groups[groups.length - 1] = { ...before, count: before.count + 1 };
    else groups.push({ vehicle, count: 1, from: index + 1 });
  });
  return { name: train.name, vehicles: places.map(({ vehicle }) => vehicle), groups, length: trainLength(places) };
}
