import { trackLengthMm } from '../places.ts';
import type { Scene } from '../schema.ts';
import type { SceneTrack } from '../trackSchema.ts';
import { trainLength, trainPlaces } from '../trains.ts';
import type { SceneTrial } from '../trialSchema.ts';
import type { ChainageMap } from './chainageMap.ts';
import { mmText, tidy } from './tidy.ts';

/** What must be left between start and arrival for a trial to be one, mm. */
const leastRunMm = 10;

/** Chainages inside a track by less than this, mm, may round to beyond it. */
const roundingMm = 1e-6;

/**
 * A trial whose start, arrival and orders lie on a track that has changed: moved along with it and brought inside, so that the whole
 * train stands on the track. A start or arrival that no longer leaves a run is dropped, which means the end of the track. Throws RangeError when the train has
 * no room.
 */
export function fittedTrial(scene: Scene, track: SceneTrack, trial: SceneTrial, map?: ChainageMap): SceneTrial {
  const train = scene.trains.find(({ id }) => id === trial.train);
  if (train === undefined) return trial;
  const lengthMm = trackLengthMm(track) - roundingMm;
  const trainMm = trainLength(trainPlaces(scene, train)) * 1000;
  if (trainMm + leastRunMm >= lengthMm) {
    throw new RangeError(
      `${train.name} is ${mmText(trainMm)} long and has no room to run on ${track.name}, ${mmText(lengthMm)}.`,
    );
  }
  const forward = trial.towards === 'end';
  const moved = (mm: number): number => (map === undefined ? mm : tidy(map.at(mm)));
  const within = (mm: number, low: number, high: number): number => Math.min(Math.max(mm, low), high);
  const { startMm: start, finishMm: finish, ...placeless } = trial;
  const startMm =
    start === undefined
      ? undefined
      : within(moved(start), forward ? trainMm : 0, forward ? lengthMm : lengthMm - trainMm);
  const finishMm = finish === undefined ? undefined : within(moved(finish), 0, lengthMm);
  const from = startMm ?? (forward ? trainMm : lengthMm - trainMm);
  const to = finishMm ?? (forward ? lengthMm : 0);
  const run = forward ? to - from : from - to;
  const ends =
    run >= leastRunMm ? { ...(startMm !== undefined && { startMm }), ...(finishMm !== undefined && { finishMm }) } : {};
  return {
    ...placeless,
    ...ends,
    orders: trial.orders.map((order) =>
      order.atMm === undefined ? order : { ...order, atMm: within(moved(order.atMm), 0, lengthMm) },
    ),
  };
}
