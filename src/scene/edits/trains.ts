import { bounds } from '../schema/bounds.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrain } from '../schema/trialSchema.ts';
import { newId } from './ids.ts';
import { refitted } from './refitted.ts';
import { withoutLostStops } from './tour.ts';

/** What may be said anew of one entry of a train. */
export interface EntryChange {
  readonly stock?: string;
  /** How many alike, from 1. */
  readonly count?: number;
  /** Its front faces the end called "last". */
  readonly turned?: boolean;
}

/** The train of a scene with this id. Throws RangeError, naming those there are. */
function trainOf(scene: Scene, trainId: string): SceneTrain {
  const train = scene.trains.find(({ id }) => id === trainId);
  if (train !== undefined) return train;
  throw new RangeError(`There is no train "${trainId}"; there are ${scene.trains.map(({ id }) => id).join(', ')}.`);
}

/** The scene with a train that has these vehicles, and with its trials brought inside their tracks again. */
function putTrain(scene: Scene, train: SceneTrain): Scene {
  const vehicles = train.vehicles.reduce((sum, { count = 1 }) => sum + count, 0);
  if (vehicles === 0) throw new RangeError(`${train.name} needs at least one vehicle.`);
  if (vehicles > bounds.vehicles)
    throw new RangeError(
      `${train.name} would have ${vehicles} vehicles; at most ${bounds.vehicles} can be worked out.`,
    );
  return refitted(
    { ...scene, trains: scene.trains.map((one) => (one.id === train.id ? train : one)) },
    ({ id }) => id === train.id,
  );
}

/** The scene with a vehicle added to a train before the entry at `index`, or behind all. Throws RangeError in words. */
export function addVehicle(scene: Scene, trainId: string, stock: string, index?: number): Scene {
  const train = trainOf(scene, trainId);
  const at = index ?? train.vehicles.length;
  return putTrain(scene, { ...train, vehicles: train.vehicles.toSpliced(at, 0, { stock }) });
}

/** The scene with one entry of a train (index from 0) changed. Throws RangeError in words. */
export function setEntry(scene: Scene, trainId: string, index: number, change: EntryChange): Scene {
  const train = trainOf(scene, trainId);
  const { count, turned, ...rest } = { ...train.vehicles[index], ...change };
  const entry = { ...rest, ...(count !== undefined && count !== 1 && { count }), ...(turned && { turned }) };
  return putTrain(scene, { ...train, vehicles: train.vehicles.with(index, entry) });
}

/** The scene without one entry of a train. Throws RangeError in words for the only one. */
export function removeEntry(scene: Scene, trainId: string, index: number): Scene {
  const train = trainOf(scene, trainId);
  return putTrain(scene, { ...train, vehicles: train.vehicles.toSpliced(index, 1) });
}

/** The scene with one entry of a train put before the one ahead of it (`by` -1) or behind the next (`by` 1); as it is at an end. */
export function moveEntry(scene: Scene, trainId: string, index: number, by: -1 | 1): Scene {
  const train = trainOf(scene, trainId);
  const entry = train.vehicles[index];
  const to = index + by;
  if (entry === undefined || to < 0 || to >= train.vehicles.length) return scene;
  return putTrain(scene, { ...train, vehicles: train.vehicles.toSpliced(index, 1).toSpliced(to, 0, entry) });
}

/** The scene with one more train, made up as another is, behind it in the list; it has no trials yet. */
export function copyTrain(scene: Scene, trainId: string, name: string): Scene {
  const like = trainOf(scene, trainId);
  const id = newId(scene.trains, name, 'train');
  const after = scene.trains.indexOf(like) + 1;
  return { ...scene, trains: scene.trains.toSpliced(after, 0, { ...like, id, name }) };
}

/** The scene with a train called otherwise. */
export function renameTrain(scene: Scene, trainId: string, name: string): Scene {
  trainOf(scene, trainId);
  return { ...scene, trains: scene.trains.map((train) => (train.id === trainId ? { ...train, name } : train)) };
}

/** The scene without a train and its trials. Throws RangeError in words where no trial would be left. */
export function removeTrain(scene: Scene, trainId: string): Scene {
  const gone = trainOf(scene, trainId);
  const trials = scene.trials.filter(({ train }) => train !== trainId);
  if (trials.length === 0)
    throw new RangeError(`Every trial is run with ${gone.name}: make a trial of another train first.`);
  const { opensWith, ...rest } = scene;
  return withoutLostStops({
    ...rest,
    trains: scene.trains.filter(({ id }) => id !== trainId),
    trials,
    ...(opensWith !== undefined && trials.some(({ id }) => id === opensWith) && { opensWith }),
  });
}
