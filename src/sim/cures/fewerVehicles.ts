import { type Scene, type SceneOrder, type SceneTrain, type TrainPlace, trainPlaces } from '../../scene/index.ts';
import { isPropelled, runningOrder } from '../formation.ts';
import { trialParts, withTrain } from './parts.ts';

/**
 * Takes vehicles off a trial's train at the end away from its engines: the last ones of a pulled train, the first ones of a
 * propelled one. Engines and tenders stay, and at least one other vehicle, or the answer is null.
 */
export function takeVehiclesOff(scene: Scene, trialId: string, by: number): Scene | null {
  const parts = trialParts(scene, trialId);
  if (parts === null || !Number.isInteger(by) || by < 1) return null;
  const { train, trial } = parts;
  const places = trainPlaces(scene, train);
  const inLine = places.map((_, number) => number);
  if (trial.leading === 'last') inLine.reverse();
  if (!isPropelled(runningOrder(places, trial.leading))) inLine.reverse();
  const loose = inLine.filter((number) => isLoose(places[number]));
  if (by >= loose.length) return null;
  const gone = new Set(loose.slice(0, by));
  const changed = withTrain(scene, without(train, places, gone));
  return {
    ...changed,
    trials: changed.trials.map((one) =>
      one.train === train.id ? { ...one, orders: one.orders.map((order) => renumbered(order, gone)) } : one,
    ),
  };
}

const isLoose = ({ vehicle }: TrainPlace): boolean => vehicle.drive === null && vehicle.kind !== 'tender';

function without(train: SceneTrain, places: readonly TrainPlace[], gone: ReadonlySet<number>): SceneTrain {
  const left = train.vehicles.map((entry) => entry.count ?? 1);
  for (const number of gone) left[places[number].entry]--;
  return {
    ...train,
    vehicles: train.vehicles.flatMap(({ count: _count, ...entry }, index) => {
      if (left[index] === 0) return [];
      return [left[index] === 1 ? entry : { ...entry, count: left[index] }];
    }),
  };
}

/** An order to one vehicle keeps its vehicle: its number falls with every vehicle taken off before it. */
function renumbered(order: SceneOrder, gone: ReadonlySet<number>): SceneOrder {
  if (order.vehicle === undefined) return order;
  const before = [...gone].filter((number) => number + 1 < (order.vehicle ?? 0)).length;
  return { ...order, vehicle: order.vehicle - before };
}
