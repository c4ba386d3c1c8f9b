import { freeId, type Scene, type SceneTrial } from '../scene/index.ts';

/** Which end of a train goes ahead, and which end of the track it makes for. */
export interface TrainWorking {
  readonly leading: SceneTrial['leading'];
  readonly towards: 'end' | 'start';
}

/** Every way a train can be worked over a track: either end ahead, to either end. */
const workings: readonly TrainWorking[] = [
  { leading: 'first', towards: 'end' },
  { leading: 'first', towards: 'start' },
  { leading: 'last', towards: 'end' },
  { leading: 'last', towards: 'start' },
];

/** The workings of a train over a track that have no trial yet. */
export function missingWorkings({ trials }: Scene, trainId: string, trackId: string): readonly TrainWorking[] {
  const over = trials.filter(({ train, track }) => train === trainId && track === trackId);
  return workings.filter(
    ({ leading, towards }) => !over.some((trial) => trial.leading === leading && trial.towards === towards),
  );
}

/**
 * The scene with a trial for each way a train can be worked over a track, pulled and propelled, both ways, each driven as the trial is that `like`
 * names for it; those that are there already stay. `nameOf` names one that has its id for a name. Throws RangeError when there is no such trial.
 */
export function withAllWorkings(
  scene: Scene,
  trainId: string,
  trackId: string,
  like: (working: TrainWorking) => string,
  nameOf: (scene: Scene, trial: SceneTrial, working: TrainWorking) => string,
): Scene {
  const trials = [...scene.trials];
  for (const working of missingWorkings(scene, trainId, trackId)) {
    const { placeless, setting } = drivenAs(scene, like(working));
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
    trials.push({
      ...unnamed,
      name: nameOf({ ...scene, trials: [...trials, unnamed] }, unnamed, working).slice(0, 120),
    });
  }
  return { ...scene, trials };
}

/** What is taken of a trial for others: how hard it is driven, and all but its places and what it has to do with others. */
function drivenAs(scene: Scene, id: string) {
  const driven = scene.trials.find((trial) => trial.id === id);
  if (driven === undefined) throw new RangeError(`There is no trial “${id}” to drive them by.`);
  const {
    startMm: _start,
    finishMm: _finish,
    passers: _passers,
    route: _route,
    follows: _follows,
    stopS: _stop,
    ...placeless
  } = driven;
  return { placeless, setting: hardest(driven) };
}

/** The greatest speed setting of a trial, either way. */
export const hardest = ({ orders }: Pick<SceneTrial, 'orders'>): number =>
  Math.max(...orders.map(({ setting }) => Math.abs(setting)));
