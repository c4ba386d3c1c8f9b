import { lengthOverBuffers, turnVehicle } from '../../core/stock/index.ts';
import type { Vehicle } from '../../core/stock/types.ts';
import { type Scene, vehicleOf } from '../../scene/index.ts';

/** Two vehicles as they stand coupled, both facing the way they go. */
export interface Pair {
  readonly leading: Vehicle;
  readonly trailing: Vehicle;
  /** Which of the collection's vehicles they are. */
  readonly stock: readonly [leading: number, trailing: number];
}

/** Everything a person may put on the track. */
export interface Collection {
  readonly vehicles: readonly Vehicle[];
  /** Every joint of the trains, each once; a vehicle in no train stands behind its like. */
  readonly pairs: readonly Pair[];
  readonly longest: Vehicle;
  readonly tallest: Vehicle;
}

/** An entry of a train, or a vehicle by itself: which of the stock, and which way round. */
interface Standing {
  readonly stock: number;
  readonly turned: boolean;
}

let known: { readonly scene: Scene; readonly collection: Collection } | null = null;

/** The vehicles of a scene with the joints they make. The last answer is kept while the stock and the trains are the same. */
export function collectionOf(scene: Scene): Collection {
  const same =
    known !== null &&
    known.scene.stock === scene.stock &&
    known.scene.trains === scene.trains &&
    known.scene.couplings === scene.couplings &&
    known.scene.scale.gaugeMm === scene.scale.gaugeMm;
  if (known === null || !same) known = { scene, collection: collected(scene) };
  return known.collection;
}

function collected(scene: Scene): Collection {
  const vehicles = scene.stock.map((file) => vehicleOf(scene, file));
  const stand = ({ stock, turned }: Standing): Vehicle => (turned ? turnVehicle(vehicles[stock]) : vehicles[stock]);
  const pairs = new Map<string, Pair>();
  const inTrains = new Set<number>();
  const couple = (ahead: Standing, behind: Standing): void => {
    const key = `${ahead.stock} ${ahead.turned} ${behind.stock} ${behind.turned}`;
    if (!pairs.has(key)) {
      pairs.set(key, { leading: stand(ahead), trailing: stand(behind), stock: [ahead.stock, behind.stock] });
    }
  };
  for (const train of scene.trains) {
    let before: Standing | null = null;
    for (const { stock: id, turned = false, count = 1 } of train.vehicles) {
      const stock = scene.stock.findIndex((file) => file.id === id);
      if (stock < 0) continue;
      const now = { stock, turned };
      if (before !== null) couple(before, now);
      if (count > 1) couple(now, now);
      if (before !== null || count > 1 || train.vehicles.length > 1) inTrains.add(stock);
      before = now;
    }
  }
  vehicles.forEach((_, stock) => {
    const alone = { stock, turned: false };
    if (!inTrains.has(stock)) couple(alone, alone);
  });
  const most = (measure: (vehicle: Vehicle) => number): Vehicle =>
    vehicles.reduce((best, one) => (measure(one) > measure(best) ? one : best));
  return {
    vehicles,
    pairs: [...pairs.values()],
    longest: most(lengthOverBuffers),
    tallest: most(({ bodyHeight }) => bodyHeight),
  };
}
