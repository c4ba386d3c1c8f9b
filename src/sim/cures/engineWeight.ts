import { type Scene, tidy, vehicleOf } from '../../scene/index.ts';
import { trialParts } from './parts.ts';

/** Adds `by` kg over the driven wheels of every engine of a trial's train; null for a train without one. */
export function addEngineWeight(scene: Scene, trialId: string, by: number): Scene | null {
  const parts = trialParts(scene, trialId);
  if (parts === null) return null;
  const grams = tidy(by * 1e3);
  const names = new Set(parts.train.vehicles.map((entry) => entry.stock));
  let found = false;
  const stock = scene.stock.map((vehicle) => {
    if (!names.has(vehicle.id) || vehicle.drive === undefined) return vehicle;
    found = true;
    const { drivenMassG } = vehicle.drive;
    const drive =
      drivenMassG === undefined ? vehicle.drive : { ...vehicle.drive, drivenMassG: tidy(drivenMassG + grams) };
    const massG = vehicle.massG ?? vehicleOf(scene, vehicle).mass * 1e3;
    return { ...vehicle, massG: tidy(massG + grams), drive };
  });
  if (!found) return null;
  const trains = scene.trains.map((train) => ({
    ...train,
    vehicles: train.vehicles.map((entry) => {
      const driven = scene.stock.find((one) => one.id === entry.stock)?.drive !== undefined;
      const heavier = driven && names.has(entry.stock) && entry.massG !== undefined;
      return heavier ? { ...entry, massG: tidy((entry.massG ?? 0) + grams) } : entry;
    }),
  }));
  return { ...scene, stock, trains };
}
