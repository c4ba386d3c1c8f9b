import { freeId, reversedRoute, type Scene, sameWay, towardsOf } from '../scene/index.ts';

export type SceneTrialEntry = Scene['trials'][number];

/** How a trial is driven, as the two switches say it. */
export interface Working {
  readonly leading: SceneTrialEntry['leading'];
  /** Of a route: which way it goes, as `towardsOf` tells it. */
  readonly towards: 'end' | 'start';
}

export const givenWorking = (scene: Scene, trial: SceneTrialEntry): Working => ({
  leading: trial.leading,
  towards: towardsOf(scene, trial),
});

export const findTrial = (scene: Scene, trialId: string): SceneTrialEntry | null =>
  scene.trials.find((trial) => trial.id === trialId) ?? null;

/** The setting a trial runs at once it is under way: the greatest it orders, -1 to 1. */
export function runningSetting(trial: SceneTrialEntry): number {
  return trial.orders.reduce((most, order) => (Math.abs(order.setting) > Math.abs(most) ? order.setting : most), 0);
}

/** The same scene with a trial's running setting changed; orders at other settings stay. */
export function withSetting(scene: Scene, trialId: string, setting: number): Scene {
  return {
    ...scene,
    trials: scene.trials.map((trial) => {
      if (trial.id !== trialId) return trial;
      const running = runningSetting(trial);
      const orders = trial.orders.map((order) => (order.setting === running ? { ...order, setting } : order));
      return { ...trial, orders };
    }),
  };
}

/** A trial of the scene that takes the same train over the same track or route the wanted way, or null. */
export function trialWorked(scene: Scene, like: SceneTrialEntry, wanted: Working): SceneTrialEntry | null {
  const fits = (trial: SceneTrialEntry) =>
    sameWay(trial, like) &&
    trial.train === like.train &&
    trial.leading === wanted.leading &&
    towardsOf(scene, trial) === wanted.towards;
  return fits(like) ? like : (scene.trials.find(fits) ?? null);
}

/**
 * The same scene with one more trial: `like`, worked the wanted way.
 *
 * Places along the track lose their meaning when the train comes from the other end, so a trial that is turned round starts and
 * ends at the ends of the track and runs at one setting from the start. With its other end ahead it goes on from no other trial either.
 */
export function withTrialWorked(
  scene: Scene,
  like: SceneTrialEntry,
  wanted: Working,
  name: string,
): { scene: Scene; trialId: string } {
  const { startMm: _start, finishMm: _finish, stopS: _stop, ...placeless } = like;
  const turned = wanted.towards !== towardsOf(scene, like);
  const { follows: _follows, ...base } = turned
    ? { ...placeless, orders: [{ atS: 0, setting: runningSetting(like) }] }
    : like;
  const route = like.route && turned ? reversedRoute(like.route) : like.route;
  const way = route === undefined ? { towards: wanted.towards } : { route };
  const trialId = freeId(
    scene.trials.map((trial) => trial.id),
    `${like.id}-${turned ? 'back' : 'other-end'}`.slice(0, 54),
  );
  const trial: SceneTrialEntry = { ...base, ...way, leading: wanted.leading, id: trialId, name: name.slice(0, 120) };
  return { scene: { ...scene, trials: [...scene.trials, trial] }, trialId };
}
