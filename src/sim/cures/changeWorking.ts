import { type Scene, trialsTogether } from '../../scene/index.ts';
import { trialParts } from './parts.ts';

/** The same train over the same way with its other end ahead: pulled instead of pushed, or the reverse; with it all trials that go on from each other. */
export function changeWorking(scene: Scene, trialId: string): Scene | null {
  const parts = trialParts(scene, trialId);
  if (parts === null) return null;
  const together = trialsTogether(scene, trialId);
  const trials = scene.trials.map((trial) =>
    together.has(trial.id)
      ? { ...trial, leading: trial.leading === 'first' ? ('last' as const) : ('first' as const) }
      : trial,
  );
  return { ...scene, trials };
}
