import type { SceneTrial } from './schema/trialSchema.ts';

/** How far inside the ends of its way a trial starts and finishes when the file does not say, mm. */
const insideMm = 10;

/**
 * Where the leading end starts and arrives, chainage in mm along the trial's way of this length, and whether the train runs
 * with growing chainage, as it always does on a route.
 */
export function leadingEnds(
  lengthMm: number,
  trainMm: number,
  trial: SceneTrial,
): { readonly startMm: number; readonly finishMm: number; readonly forward: boolean } {
  const forward = trial.towards !== 'start';
  const inside = Math.min(insideMm, (lengthMm - trainMm) / 4);
  return {
    startMm: trial.startMm ?? (forward ? trainMm + inside : lengthMm - trainMm - inside),
    finishMm: trial.finishMm ?? (forward ? lengthMm - inside : inside),
    forward,
  };
}
