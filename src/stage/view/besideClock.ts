import { referencePlaces, timeAtPlace } from '../../state/index.ts';
import type { SessionState } from '../../state/types.ts';
import { frameAt } from '../stock/runClock.ts';

type Solved = Pick<NonNullable<SessionState['beside']>, 'trial' | 'result'>;

/** Where the middle of a train is in every frame, track chainage, m; worked out once a result. */
const known = new WeakMap<Solved['result'], Float64Array>();

function places({ trial, result }: Solved): Float64Array {
  const before = known.get(result);
  if (before !== undefined) return before;
  const fresh = referencePlaces(trial, result, { kind: 'middle' });
  known.set(result, fresh);
  return fresh;
}

/**
 * The time (s) of the other railway's run that is shown with a time of this one's: the same moment, or the one at which the middle of its train is as far
 * along the track.
 */
export function besideTime(own: Solved, other: Solved, match: 'moment' | 'place', time: number): number {
  if (match === 'moment') return time;
  const along = places(own);
  const [frame, share] = frameAt(own.result.run, time);
  const place = share === 0 ? along[frame] : along[frame] + share * (along[frame + 1] - along[frame]);
  return timeAtPlace(other.result.run.time, places(other), place, time);
}
