import type { Scene } from '../../scene/index.ts';
import { compileScene } from '../compileScene.ts';
import { compileTrial } from '../compileTrial.ts';
import type { RunHooks } from '../types.ts';
import { measureTrial } from './measureTrial.ts';
import type { Exactness, Probe, Setting, TrialMeasure } from './types.ts';
import { vary } from './vary.ts';

/** What a probe asks: a scene, other values at some addresses, and the trials to be run with them. */
export interface ProbeRequest {
  readonly scene: Scene;
  readonly settings: readonly Setting[];
  readonly trialIds: readonly string[];
  readonly exactness: Exactness;
}

/**
 * Runs some trials of a scene with some settings and measures them. A railway that cannot be laid or run with these settings
 * is an answer, not an error. Rejects with an AbortError when cancelled.
 */
export async function probeScene(request: ProbeRequest, hooks: RunHooks = {}): Promise<Probe> {
  const varied = vary(request.scene, request.settings);
  if (!varied.ok) return varied;
  const trials: TrialMeasure[] = [];
  try {
    const compiled = compileScene(varied.scene);
    for (const [index, id] of request.trialIds.entries()) {
      const onProgress = (done: number) => hooks.onProgress?.((index + done) / request.trialIds.length);
      trials.push(await measureTrial(compileTrial(compiled, id), request.exactness, { ...hooks, onProgress }));
    }
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, reason: error.message };
    throw error;
  }
  return { ok: true, trials };
}
