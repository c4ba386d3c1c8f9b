import { findTrial, runningSetting } from './trialEdits.ts';
import type { SessionState } from './types.ts';

/** The running speed setting of the trial the person means, 0 to 1, or null while there is none. */
export function presentSetting({ scene, trialId }: SessionState): number | null {
  const trial = scene && trialId ? findTrial(scene, trialId) : null;
  return trial && Math.abs(runningSetting(trial));
}
