import { trialDefaults } from '../defaults.ts';
import { takingOver, trialsBefore, withoutLoose } from '../goingOn.ts';
import { bounds } from '../schema/bounds.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneOrder, SceneTrial } from '../schema/trialSchema.ts';
import { withoutLostStops } from './tour.ts';

/** How long after the last order by time a further one is first given, s. */
const laterS = 10;

/** What may be said anew of an order; what is undefined goes. An order is by time or by place: one said, the other goes. */
export type OrderChange = { readonly [K in keyof SceneOrder]?: SceneOrder[K] | undefined };

function putTrial(scene: Scene, trialId: string, make: (trial: SceneTrial) => SceneTrial): Scene {
  const old = scene.trials.find(({ id }) => id === trialId);
  if (old === undefined) throw new RangeError(`There is no trial "${trialId}".`);
  return { ...scene, trials: scene.trials.map((trial) => (trial === old ? make(old) : trial)) };
}

/** The scene with a trial called otherwise; its id, by which commands find it, stays. */
export const renameTrial = (scene: Scene, trialId: string, name: string): Scene =>
  putTrial(scene, trialId, (trial) => ({ ...trial, name }));

/** The scene without a trial; one that goes on from it begins by itself where it took the train over, and stops of the tour that showed it go. Throws RangeError in words for the only one. */
export function removeTrial(scene: Scene, trialId: string): Scene {
  const kept = scene.trials.filter(({ id }) => id !== trialId);
  if (kept.length === 0) throw new RangeError('It is the only trial of this railway.');
  const trials = withoutLoose(scene, kept);
  const { opensWith, ...rest } = scene;
  return withoutLostStops({ ...rest, trials, ...(opensWith !== undefined && opensWith !== trialId && { opensWith }) });
}

/** The scene with one more order to a trial, behind the last: to stop, some seconds later or, after one by place, from the start. Throws RangeError when it has too many. */
export function addOrder(scene: Scene, trialId: string): Scene {
  return putTrial(scene, trialId, (trial) => {
    if (trial.orders.length >= bounds.orders) throw new RangeError(`A trial has at most ${bounds.orders} orders.`);
    const last = trial.orders.reduce((latest, { atS }) => Math.max(latest, atS ?? 0), 0);
    return { ...trial, orders: [...trial.orders, { atS: Math.min(last + laterS, bounds.timeLimitS), setting: 0 }] };
  });
}

/** The scene with one order of a trial (index from 0) changed. */
export function setOrder(scene: Scene, trialId: string, index: number, change: OrderChange): Scene {
  return putTrial(scene, trialId, (trial) => {
    const { atS, atMm, ...rest } = trial.orders[index];
    const moved = change.atS !== undefined || change.atMm !== undefined;
    const when = moved ? {} : { atS, atMm };
    const order = Object.fromEntries(
      Object.entries({ ...when, ...rest, ...change }).filter(([, value]) => value !== undefined),
    );
    return { ...trial, orders: trial.orders.with(index, order as SceneOrder) };
  });
}

/** The scene without one order of a trial. Throws RangeError in words for the only one. */
export function removeOrder(scene: Scene, trialId: string, index: number): Scene {
  return putTrial(scene, trialId, (trial) => {
    if (trial.orders.length === 1) throw new RangeError('Without an order the train stands still.');
    return { ...trial, orders: trial.orders.toSpliced(index, 1) };
  });
}

/** The scene with the place of a trial's leading end at the start or on arrival, mm; undefined means the end of the track. */
export function setTrialEnd(scene: Scene, trialId: string, end: 'startMm' | 'finishMm', mm: number | undefined): Scene {
  return putTrial(scene, trialId, (trial) => {
    const { [end]: _old, ...rest } = trial;
    return { ...rest, ...(mm !== undefined && { [end]: mm }) } as SceneTrial;
  });
}

/**
 * The scene with a trial over when its train stands, the driver shutting off over so long as it arrives, s; undefined: over on arrival. Throws RangeError in
 * words where another trial goes on from it, which needs a train at a stand.
 */
export function setStop(scene: Scene, trialId: string, stopS: number | undefined): Scene {
  const next = scene.trials.find(({ follows }) => follows === trialId);
  if (stopS === undefined && next) throw new RangeError(`“${next.name}” goes on from it, so it has to end at a stand.`);
  return putTrial(scene, trialId, ({ stopS: _old, ...rest }) => ({ ...rest, ...(stopS !== undefined && { stopS }) }));
}

/**
 * The scene with a trial that goes on from another, with that end of the train ahead which then leads; the other comes to a stand if it does not yet. Undefined:
 * it begins by itself, where it took the train over. Throws RangeError in words where the other one's train is not this one's or does not stop on its way, or
 * where they would go round in a circle.
 */
export function setFollows(scene: Scene, trialId: string, beforeId: string | undefined): Scene {
  if (beforeId === undefined) {
    const others = scene.trials.filter(({ id }) => id !== scene.trials.find((one) => one.id === trialId)?.follows);
    return putTrial(scene, trialId, (trial) => withoutLoose(scene, others).find(({ id }) => id === trialId) ?? trial);
  }
  const before = scene.trials.find(({ id }) => id === beforeId);
  if (before === undefined) throw new RangeError(`There is no trial "${beforeId}".`);
  const gone = putTrial(scene, trialId, ({ startMm: _start, ...trial }) => {
    if (before.train !== trial.train) throw new RangeError(`“${before.name}” is run with another train.`);
    if (beforeId === trialId || trialsBefore(scene, before).some(({ id }) => id === trialId)) {
      throw new RangeError(`“${before.name}” itself goes on from “${trial.name}”.`);
    }
    const taken = takingOver(scene, before, trial);
    if (taken === null) throw new RangeError(`Where “${before.name}” arrives is not on the way of “${trial.name}”.`);
    return { ...trial, leading: taken.leading, follows: beforeId };
  });
  return before.stopS === undefined ? setStop(gone, beforeId, trialDefaults.rampS.value) : gone;
}
