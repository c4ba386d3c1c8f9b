import { lengthOverBuffers } from '../stock/index.ts';
import { curveChangeNear } from './curves.ts';
import { easementLength, longerEasement } from './easement.ts';
import type { Candidate } from './explainer.ts';
import { jointReach, type Situation } from './situation.ts';
import type { Cause } from './types.ts';

/** A straight is cut to these steps, m. */
const roundTo = 0.01;

/**
 * An easement where the curvature changes, and on a reverse curve a straight as long as the longest vehicle. No straight takes
 * away the offset of entering a curve, so the easement comes first. How much either leaves is not worked out here.
 */
export function curveCures(situation: Situation, causes: readonly Cause[]): Candidate[] {
  const { trial, context, worst, definition } = situation;
  const place = trial.otherWay(worst.chainage);
  const change = curveChangeNear(trial.sceneTrack, place, 2 * jointReach(situation));
  if (change === null) return [];
  const { vehicles } = context.train;
  const gauge = vehicles[worst.subject].gauge;
  const { chainage } = change;
  const length = longerEasement(change.length, easementLength(gauge, change.radius));
  const candidates: Candidate[] = [{ cure: { kind: 'easement', chainage, length }, expected: 0.6 * definition.plenty }];
  // Where a transition runs from curve to curve there is no place for a straight, and none is needed.
  if (change.length === 0 && causes.some((cause) => cause.kind === 'reverse-curve')) {
    const longest = Math.max(...vehicles.map(lengthOverBuffers));
    const straight = Math.ceil(longest / roundTo - 1e-9) * roundTo;
    candidates.push({
      cure: { kind: 'straight-between', chainage, length: straight },
      expected: 0.4 * definition.plenty,
    });
  }
  return candidates;
}
