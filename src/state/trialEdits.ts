import type { Scene } from '../scene/index.ts';

export type SceneTrialEntry = Scene['trials'][number];

/** How a trial is driven, as the two switches say it. */
export interface Working {
  readonly leading: SceneTrialEntry['leading'];
  readonly towards: SceneTrialEntry['towards'];
}

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

/** A trial of the scene that takes the same train over the same track the wanted way, or null. */
export function trialWorked(scene: Scene, like: SceneTrialEntry, wanted: Working): SceneTrialEntry | null {
  const fits = (trial: SceneTrialEntry) =>
    trial.track === like.track &&
    trial.train === like.train &&
    trial.leading === wanted.leading &&
    trial.towards === wanted.towards;
  return fits(like) ? like : (scene.trials.find(fits) ?? null);
}

/**
 * The same scene with one more trial: `like`, worked the wanted way.
 *
 * Places along the track lose their meaning when the train comes from the other end, so a trial that is turned round starts and
 * ends at the ends of the track and runs at one setting from the start.
 */
export function withTrialWorked(
  scene: Scene,
  like: SceneTrialEntry,
  wanted: Working,
  name: string,
): { scene: Scene; trialId: string } {
  const { startMm: _start, finishMm: _finish, ...placeless } = like;
  const turned = wanted.towards !== like.towards;
  const base = turned ? { ...placeless, orders: [{ atS: 0, setting: runningSetting(like) }] } : like;
  const trialId = freeId(
    scene.trials.map((trial) => trial.id),
    `${like.id}-${turned ? 'back' : 'other-end'}`.slice(0, 54),
  );
  const trial: SceneTrialEntry = { ...base, ...wanted, id: trialId, name: name.slice(0, 120) };
  return { scene: { ...scene, trials: [...scene.trials, trial] }, trialId };
}

function freeId(taken: readonly string[], wish: string): string {
  if (!taken.includes(wish)) return wish;
  for (let number = 2; ; number++) {
    const id = `${wish}-${number}`;
    if (!taken.includes(id)) return id;
  }
}
