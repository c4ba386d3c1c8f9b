import type { Address, Scene, SceneTrain } from '../../scene/index.ts';
import { placedSupports, readAt, trainPlaces } from '../../scene/index.ts';
import type { UncertainQuantity } from '../../sim/study/index.ts';
import type { ToleranceAsk } from './types.ts';

/** A number that may be off, and what people call it. */
export interface Uncertain extends UncertainQuantity {
  readonly words: string;
}

/**
 * What of these trials may be off and by how much: every coupling head by itself, every support of their tracks, every vehicle's mass. The
 * scene that comes with it has its trains written out vehicle by vehicle, so that alike vehicles need not be off alike.
 */
export function uncertainOf(
  scene: Scene,
  trialIds: readonly string[],
  { heads, supportsMm, massPercent }: Omit<ToleranceAsk, 'draws'>,
): { readonly scene: Scene; readonly uncertain: readonly Uncertain[] } {
  const trials = scene.trials.filter(({ id }) => trialIds.includes(id));
  const trains = scene.trains.filter(({ id }) => trials.some(({ train }) => train === id));
  const written: Scene = {
    ...scene,
    trains: scene.trains.map((train) => (trains.includes(train) ? writtenOut(train) : train)),
  };
  const uncertain: Uncertain[] = [];
  for (const train of written.trains.filter(({ id }) => trains.some((one) => one.id === id))) {
    trainPlaces(written, train).forEach(({ vehicle }, index) => {
      const at = `trains/${train.id}/vehicles/${index + 1}`;
      const name = `vehicle ${index + 1} of ${train.name}`;
      for (const end of heads ? (['front', 'rear'] as const) : []) {
        const mm = vehicle[end].coupling.headHeightTolerance * 1e3;
        if (mm > 0) uncertain.push(around(written, `${at}/headHeightOffMm/${end}`, mm, `${end} head of ${name}`));
      }
      const grams = vehicle.mass * 1e3;
      const offG = (grams * massPercent) / 100;
      if (offG > 0)
        uncertain.push({ at: `${at}/massG`, low: grams - offG, high: grams + offG, words: `mass of ${name}` });
    });
  }
  if (supportsMm > 0) {
    for (const track of scene.tracks.filter(({ id }) => trials.some((trial) => trial.track === id))) {
      const listed = Array.isArray(track.supports);
      placedSupports(track).forEach((_, index) => {
        const way = `tracks/${track.id}/supports`;
        const at = listed ? `${way}/${index + 1}/offMm` : `${way}/off/${index + 1}/byMm`;
        uncertain.push(around(written, at, supportsMm, `support ${index + 1}`));
      });
    }
  }
  return { scene: written, uncertain };
}

function around(scene: Scene, at: Address, by: number, words: string): Uncertain {
  const now = readAt(scene, at);
  const middle = typeof now === 'number' ? now : 0;
  return { at, low: middle - by, high: middle + by, words };
}

/** A train with an entry for each vehicle. */
const writtenOut = (train: SceneTrain): SceneTrain => ({
  ...train,
  vehicles: train.vehicles.flatMap(({ count = 1, ...entry }) => Array.from({ length: count }, () => ({ ...entry }))),
});
