import { bounds } from '../bounds.ts';
import type { Scene } from '../schema.ts';
import type { SceneOrder, SceneTrial } from '../trialSchema.ts';

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

/** The scene without a trial. Throws RangeError in words for the only one. */
export function removeTrial(scene: Scene, trialId: string): Scene {
  const trials = scene.trials.filter(({ id }) => id !== trialId);
  if (trials.length === 0) throw new RangeError('It is the only trial of this railway.');
  const { opensWith, ...rest } = scene;
  return { ...rest, trials, ...(opensWith !== undefined && opensWith !== trialId && { opensWith }) };
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
