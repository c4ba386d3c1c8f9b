import type { Cure } from '../core/findings/types.ts';
import type { Scene } from '../scene/index.ts';
import { applyCure } from './applyCure.ts';
import { cancelled } from './cancelled.ts';
import { compileScene } from './compileScene.ts';
import { compileTrial } from './compileTrial.ts';
import { glanceAt } from './glance/index.ts';
import { runTrial } from './runTrial.ts';
import { probeScene } from './study/probeScene.ts';
import type { RunHooks, SimHost, TrialResult } from './types.ts';

/** A host that runs trials in this thread. After `dispose` it refuses new work and calls off what is under way. */
export function createInProcessHost(): SimHost {
  const closing = new AbortController();

  /** The caller's hooks, called off by the host's own end too. */
  function untilClosed(hooks: RunHooks): RunHooks {
    if (closing.signal.aborted) throw cancelled();
    const signal = hooks.signal === undefined ? closing.signal : AbortSignal.any([hooks.signal, closing.signal]);
    return { ...hooks, signal };
  }

  const solve = async (scene: Scene, trialId: string, hooks: RunHooks): Promise<TrialResult> =>
    runTrial(compileTrial(compileScene(scene), trialId), untilClosed(hooks));

  return {
    runTrial: (scene, trialId, hooks = {}) => solve(scene, trialId, hooks),
    async tryCure(scene: Scene, trialId: string, cure: Cure, hooks: RunHooks = {}) {
      const changed = applyCure(scene, trialId, cure);
      return changed === null ? null : solve(changed, trialId, hooks);
    },
    probe: async (request, hooks = {}) => probeScene(request, untilClosed(hooks)),
    async glance(request) {
      if (closing.signal.aborted) throw cancelled();
      return glanceAt(request);
    },
    dispose: () => closing.abort(),
  };
}
