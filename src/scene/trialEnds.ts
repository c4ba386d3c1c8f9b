import { trackLengthMm } from './places.ts';
import type { SceneTrack } from './trackSchema.ts';
import type { SceneTrial } from './trialSchema.ts';

/** How far inside the ends of the track a trial starts and finishes when the file does not say, mm. */
const insideMm = 10;

/** Where the leading end starts and arrives, chainage in mm, and whether the train runs with growing chainage. */
export function leadingEnds(
  track: SceneTrack,
  trainMm: number,
  trial: SceneTrial,
): { readonly startMm: number; readonly finishMm: number; readonly forward: boolean } {
  const lengthMm = trackLengthMm(track);
  const forward = trial.towards === 'end';
  const inside = Math.min(insideMm, (lengthMm - trainMm) / 4);
  return {
    startMm: trial.startMm ?? (forward ? trainMm + inside : lengthMm - trainMm - inside),
    finishMm: trial.finishMm ?? (forward ? lengthMm - inside : inside),
    forward,
  };
}
