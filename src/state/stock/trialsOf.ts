import { freeId, type Scene, type SceneTrial } from '../../scene/index.ts';
import { findTrial, type Working } from '../trialEdits.ts';
import { trialWords } from '../words.ts';

/** Every way a train can be worked over a track: either end ahead, to either end. */
const workings: readonly Working[] = [
  { leading: 'first', towards: 'end' },
  { leading: 'first', towards: 'start' },
  { leading: 'last', towards: 'end' },
  { leading: 'last', towards: 'start' },
];

/** The workings of a train over a track that have no trial yet. */
export function missingWorkings({ trials }: Scene, trainId: string, trackId: string): readonly Working[] {
  const over = trials.filter(({ train, track }) => train === trainId && track === trackId);
  return workings.filter(
    ({ leading, towards }) => !over.some((trial) => trial.leading === leading && trial.towards === towards),
  );
}

/**
 * The scene with a trial for each way a train can be worked over a track, pulled and propelled, both ways, driven as the trial `like` is;
 * those that are there already stay. Throws RangeError when there is no such trial.
 */
export function withAllWorkings(scene: Scene, trainId: string, trackId: string, like: string): Scene {
  const driven = findTrial(scene, like);
  if (driven === null) throw new RangeError(`There is no trial “${like}” to drive them by.`);
  const {
    startMm: _start,
    finishMm: _finish,
    passers: _passers,
    route: _route,
    follows: _follows,
    stopS: _stop,
    ...placeless
  } = driven;
  const setting = Math.max(...driven.orders.map((order) => Math.abs(order.setting)));
  const trials = [...scene.trials];
  for (const working of missingWorkings(scene, trainId, trackId)) {
    const id = freeId(
      trials.map((trial) => trial.id),
      `${trainId}-${working.leading}-to-${working.towards}`.slice(0, 56),
    );
    const unnamed: SceneTrial = {
      ...placeless,
      ...working,
      id,
      name: id,
      train: trainId,
      track: trackId,
      orders: [{ atS: 0, setting }],
    };
    // Pulled or propelled, up or down: that is read from the trial once it is there.
    const name = trialWords({ ...scene, trials: [...trials, unnamed] }, unnamed, working).slice(0, 120);
    trials.push({ ...unnamed, name });
  }
  return { ...scene, trials };
}
