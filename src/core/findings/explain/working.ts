import type { Situation } from '../situation.ts';
import type { Candidate } from './explainer.ts';
import { droppable, vehiclesToDrop } from './loads.ts';
import { leastPassing } from './search.ts';
import { marginOnRoute, turnedTrain, withVehicles } from './steadyTrial.ts';

/**
 * The train with its other end ahead. What it leaves is told by statics over the whole route, where a blow has no place: so it is never
 * expected to leave more than what is called near.
 */
export function changedWorking({ trial, definition }: Situation): Candidate {
  const margin = marginOnRoute(trial, definition.id, turnedTrain(trial));
  return { cure: { kind: 'change-working' }, expected: Math.min(margin ?? definition.near, definition.near) };
}

/**
 * Fewer vehicles, until a force that those in `made` make at the finding's place falls to `limit` and the risk lets the train pass on the whole
 * of its route. `expected` says what margin a force leaves. None where that takes all of them.
 */
export function fewerVehicles(
  { trial, context, worst, definition }: Situation,
  made: (vehicle: number) => boolean,
  limit: number,
  expected: (force: number) => number,
): Candidate[] {
  const drop = vehiclesToDrop(context, made, worst.value, limit);
  if (drop === null) return [];
  const has = droppable(context).length;
  const onRoute = (by: number): number | null => {
    const change = withVehicles(trial, has - by);
    return change === null ? null : marginOnRoute(trial, definition.id, change);
  };
  const by = trial.driven === null ? drop.by : leastPassing(drop.by, has - 1, (number) => (onRoute(number) ?? 0) >= 0);
  if (by === null) return [];
  const margin = onRoute(by) ?? Number.POSITIVE_INFINITY;
  return [{ cure: { kind: 'fewer-vehicles', by }, expected: Math.min(expected(drop.force), margin) }];
}
