import type { Cure } from '../core/findings/types.ts';
import type { Scene } from '../scene/index.ts';
import { applyCure } from './applyCure.ts';
import { compileScene } from './compileScene.ts';
import { compileTrial } from './compileTrial.ts';
import { cancelled, runTrial } from './runTrial.ts';
import type { RunHooks, SimHost, TrialResult } from './types.ts';

/** A host that runs trials in this thread. After `dispose` it refuses new work and calls off what is under way. */
export function createInProcessHost(): SimHost {
  const closing = new AbortController();

  async function solve(scene: Scene, trialId: string, hooks: RunHooks): Promise<TrialResult> {
    if (closing.signal.aborted) throw cancelled();
    const signal = hooks.signal === undefined ? closing.signal : AbortSignal.any([hooks.signal, closing.signal]);
    return runTrial(compileTrial(compileScene(scene), trialId), { ...hooks, signal });
  }

  return {
    runTrial: (scene, trialId, hooks = {}) => solve(scene, trialId, hooks),
    async tryCure(scene: Scene, trialId: string, cure: Cure, hooks: RunHooks = {}) {
      const changed = applyCure(scene, trialId, cure);
      return changed === null ? null : solve(changed, trialId, hooks);
    },
    dispose: () => closing.abort(),
  };
}
