import { plannedHeight } from '../../core/track/index.ts';
import type { Scene, SceneTrial } from '../../scene/index.ts';
import { compileScene } from '../compileScene.ts';
import { compileTrial } from '../compileTrial.ts';
import { hardest, type TrainWorking, withAllWorkings } from '../everyWorking.ts';
import type { CompiledTrial } from '../types.ts';

/** Ways whose ends differ by less than this, m, go neither up nor down. */
const levelWithin = 0.005;

/** How much higher a trial's way ends than it begins, m; 0 where that is next to nothing. */
export function climbOf({ path }: Pick<CompiledTrial, 'path'>): number {
  const rise = plannedHeight(path.track, path.track.length) - plannedHeight(path.track, 0);
  return Math.abs(rise) < levelWithin ? 0 : rise;
}

/**
 * The scene with every train worked in every way over every track that it has a trial of its own on: pulled and propelled, both ways. What is added is driven as a
 * trial that goes the same way is, else as the one that is driven hardest.
 */
export function withEveryWorking(scene: Scene): Scene {
  const asked = new Map<string, (SceneTrial & { readonly track: string })[]>();
  for (const trial of scene.trials) {
    const { track } = trial;
    // What goes on from another, or over several tracks, is one working of its own.
    if (track === undefined || trial.follows !== undefined) continue;
    const key = JSON.stringify([trial.train, track]);
    asked.set(key, [...(asked.get(key) ?? []), { ...trial, track }]);
  }
  return [...asked.values()].reduce((all, trials) => {
    const [{ train, track }] = trials;
    const byForce = [...trials].sort((a, b) => hardest(b) - hardest(a));
    const like = (working: TrainWorking): string =>
      (byForce.find(({ towards }) => towards === working.towards) ?? byForce[0]).id;
    return withAllWorkings(all, train, track, like, nameOf);
  }, scene);
}

function nameOf(scene: Scene, trial: SceneTrial): string {
  const train = scene.trains.find(({ id }) => id === trial.train)?.name ?? trial.train;
  const compiled = compileTrial(compileScene(scene), trial.id);
  const climb = climbOf(compiled);
  const way = climb === 0 ? (trial.towards === 'end' ? 'out' : 'back') : climb > 0 ? 'up' : 'down';
  return `${train}, ${compiled.propelled ? 'propelled' : 'pulled'} ${way}`;
}
