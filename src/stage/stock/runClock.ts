import type { Run } from '../../core/dynamics/types.ts';
import { frontReach, standTrain } from '../../core/stock/index.ts';
import type { SessionState } from '../../state/types.ts';

type Trial = NonNullable<SessionState['trial']>;

/** Frame at or before a time (s) and the share of the way to the next: [frame, 0..1). Held inside the run. */
export function frameAt(run: Pick<Run, 'time' | 'frames' | 'interval'>, time: number): [frame: number, share: number] {
  const last = run.frames - 1;
  if (last < 1 || !(time > run.time[0])) return [0, 0];
  if (time >= run.time[last]) return [last, 0];
  let frame = Math.min(last - 1, Math.max(0, Math.floor((time - run.time[0]) / run.interval)));
  while (frame > 0 && run.time[frame] > time) frame--;
  while (frame < last - 1 && run.time[frame + 1] <= time) frame++;
  return [frame, (time - run.time[frame]) / (run.time[frame + 1] - run.time[frame])];
}

/** Value of one column of a frames × columns array at a time, in proportion between the frames around it. */
export function columnAt(
  run: Pick<Run, 'time' | 'frames' | 'interval'>,
  values: Float64Array,
  columns: number,
  column: number,
  time: number,
): number {
  const [frame, share] = frameAt(run, time);
  const at = values[frame * columns + column];
  return share === 0 ? at : at + share * (values[(frame + 1) * columns + column] - at);
}

/** Path chainage (m) of every vehicle's origin at a time (s), into `out`. */
export function chainagesAt(run: Run, time: number, out: Float64Array): void {
  const [frame, share] = frameAt(run, time);
  const row = frame * run.vehicles;
  for (let i = 0; i < run.vehicles; i++) {
    const at = run.chainage[row + i];
    out[i] = share === 0 ? at : at + share * (run.chainage[row + run.vehicles + i] - at);
  }
}

/** Where a train stands before its trial has been solved, path chainages (m); null when it does not fit the track there. */
export function standingChainages(trial: Trial): Float64Array | null {
  const { vehicles } = trial.train;
  if (vehicles.length === 0) return new Float64Array(0);
  try {
    return standTrain(trial.path.track, vehicles, trial.script.start - frontReach(vehicles[0]));
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
