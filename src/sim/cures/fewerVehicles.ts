import type { Scene, SceneOrder, SceneTrain } from '../../scene/index.ts';
import { trialParts, withTrain } from './parts.ts';

/**
 * Takes hauled vehicles off a trial's train, one after the other from the kind it has most of (the last of them in the
 * list), so that the odd ones stay. At least one hauled vehicle remains, or the answer is null.
 */
export function takeVehiclesOff(scene: Scene, trialId: string, by: number): Scene | null {
  const parts = trialParts(scene, trialId);
  if (parts === null || !Number.isInteger(by) || by < 1) return null;
  let { train } = parts;
  const removed: number[] = [];
  for (let k = 0; k < by; k++) {
    const hauled = hauledCounts(scene, train);
    const total = [...hauled.values()].reduce((sum, count) => sum + count, 0);
    if (total < 2) return null;
    const most = [...hauled].reduce((best, one) => (one[1] > best[1] ? one : best))[0];
    const entry = train.vehicles.findLastIndex((one) => one.stock === most);
    removed.push(numberOfLast(train, entry));
    train = { ...train, vehicles: withOneLess(train, entry) };
  }
  const changed = withTrain(scene, train);
  const trials = changed.trials.map((trial) =>
    trial.train === train.id ? { ...trial, orders: trial.orders.map((order) => renumbered(order, removed)) } : trial,
  );
  return { ...changed, trials };
}

/** How many vehicles of each stock a train hauls: all but engines and their tenders. */
function hauledCounts(scene: Scene, train: SceneTrain): Map<string, number> {
  const counts = new Map<string, number>();
  for (const entry of train.vehicles) {
    const kind = scene.stock.find((one) => one.id === entry.stock)?.kind;
    if (kind !== 'coach' && kind !== 'wagon') continue;
    counts.set(entry.stock, (counts.get(entry.stock) ?? 0) + (entry.count ?? 1));
  }
  return counts;
}

/** Number, from 1, of the last vehicle of an entry. */
const numberOfLast = (train: SceneTrain, entry: number): number =>
  train.vehicles.slice(0, entry + 1).reduce((sum, one) => sum + (one.count ?? 1), 0);

function withOneLess(train: SceneTrain, entry: number): SceneTrain['vehicles'] {
  const { count = 1, ...rest } = train.vehicles[entry];
  if (count === 1) return train.vehicles.toSpliced(entry, 1);
  return train.vehicles.with(entry, count === 2 ? rest : { ...rest, count: count - 1 });
}

/** An order to one vehicle keeps its vehicle: its number falls with every vehicle taken off before it. */
function renumbered(order: SceneOrder, removed: readonly number[]): SceneOrder {
  if (order.vehicle === undefined) return order;
  let number = order.vehicle;
  for (const gone of removed) if (gone < number) number--;
  return { ...order, vehicle: number };
}
