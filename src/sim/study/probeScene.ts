import { compileScene } from '../compileScene.ts';
import { compileTrial } from '../compileTrial.ts';
import type { RunHooks } from '../types.ts';
import { tracksUnder } from './affected.ts';
import { measureTrial } from './measureTrial.ts';
import { takesOf } from './takes.ts';
import type { Probe, ProbeRequest, Takes, TrialMeasure } from './types.ts';
import { vary } from './vary.ts';

/**
 * Runs some trials of a scene with some settings and measures them. A railway that cannot be laid or run with these settings
 * is an answer, not an error. Rejects with an AbortError when cancelled.
 */
export async function probeScene(request: ProbeRequest, hooks: RunHooks = {}): Promise<Probe> {
  const varied = vary(request.scene, request.settings);
  if (!varied.ok) return varied;
  const trials: TrialMeasure[] = [];
  let takes: Takes | null = null;
  try {
    const compiled = compileScene(varied.scene);
    if (request.withoutTakes !== true) takes = takesOf(compiled, tracksUnder(varied.scene, request.trialIds));
    for (const [index, id] of request.trialIds.entries()) {
      const onProgress = (done: number) => hooks.onProgress?.((index + done) / request.trialIds.length);
      trials.push(await measureTrial(compileTrial(compiled, id), request.exactness, { ...hooks, onProgress }));
    }
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, reason: error.message, takes };
    throw error;
  }
  return { ok: true, trials, takes };
}
