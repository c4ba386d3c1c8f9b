import { trackLengthMm } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import type { SceneTrial } from '../schema/trialSchema.ts';
import { trainLength, trainPlaces } from '../trains.ts';
import { type WayLeg, wayLengthMm, wayOf } from '../way.ts';
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
  const moved = (mm: number): number => (map === undefined ? mm : tidy(map.at(mm)));
  return fitted(scene, trial, { name: track.name, lengthMm: trackLengthMm(track) - roundingMm, moved });
}

/** A change of one track, for the routes that run over it. */
export interface TrackChange {
  readonly trackId: string;
  readonly before: Scene;
  /** Left out: every place keeps its chainage. */
  readonly map?: ChainageMap | undefined;
}

/** The same for a trial whose route runs over such a track; without a change it is only brought inside. Throws RangeError too when a leg has no length left. */
export function fittedRoute(scene: Scene, trial: SceneTrial, change?: TrackChange): SceneTrial {
  const { trackId, before = scene, map } = change ?? {};
  const moves = (id: string, mm: number): number => (map === undefined || id !== trackId ? mm : tidy(map.at(mm)));
  const route = (trial.route ?? []).map(({ fromMm, toMm, ...leg }) => ({
    ...leg,
    ...(fromMm !== undefined && { fromMm: moves(leg.track, fromMm) }),
    ...(toMm !== undefined && { toMm: moves(leg.track, toMm) }),
  }));
  const old = wayOf(before, trial);
  const now = wayOf(scene, { route });
  if (old === null || now === null) return trial;
  const spent = now.find((leg) => legMm(leg) < roundingMm);
  if (spent !== undefined) {
    throw new RangeError(`The route of “${trial.name}” would have no length left on ${spent.track.name}.`);
  }
  const moved = (mm: number): number => {
    let index = 0;
    let start = 0;
    while (index + 1 < old.length && mm > start + legMm(old[index])) start += legMm(old[index++]);
    const leg = old[index];
    const own = leg.fromMm + (leg.toMm > leg.fromMm ? mm - start : start - mm);
    return tidy(wayLengthMm(now.slice(0, index)) + Math.abs(moves(leg.track.id, own) - now[index].fromMm));
  };
  return fitted(scene, { ...trial, route }, { name: 'its route', lengthMm: wayLengthMm(now) - roundingMm, moved });
}

const legMm = (leg: WayLeg): number => wayLengthMm([leg]);

interface Fitting {
  readonly name: string;
  readonly lengthMm: number;
  readonly moved: (mm: number) => number;
}

function fitted(scene: Scene, trial: SceneTrial, { name, lengthMm, moved }: Fitting): SceneTrial {
  const train = scene.trains.find(({ id }) => id === trial.train);
  if (train === undefined) return trial;
  const trainMm = trainLength(trainPlaces(scene, train)) * 1000;
  if (trainMm + leastRunMm >= lengthMm) {
    throw new RangeError(
      `${train.name} is ${mmText(trainMm)} long and has no room to run on ${name}, ${mmText(lengthMm)}.`,
    );
  }
  const forward = trial.towards !== 'start';
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
