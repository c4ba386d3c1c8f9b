import { startRun } from '../../src/core/dynamics/index.ts';
import type { RunInput } from '../../src/core/dynamics/types.ts';

/** How a train ends: speed of each vehicle, m/s; way of the first, m; greatest coupling force at that moment, N. */
export interface End {
  readonly speeds: readonly number[];
  readonly way: number;
  readonly force: number;
}

/** Differences from this solver's end: of speeds, way and force, each as a share of the leading speed, the way and the force. */
export interface Difference {
  readonly speed: number;
  readonly way: number;
  readonly force: number;
}

/**
 * Most by which an engine that solves the same equations may differ. Friction that holds is smoothed over 1 mm/s there, so trains begin to
 * move a little otherwise; once settled, after 20 s, that is left in the way alone.
 */
export const settled: Difference = { speed: 1e-5, way: 1e-3, force: 1e-4 };
/** As long as waves of the start still run through the train, what they carry counts too: 200 vehicles after 5 s. */
export const underWay: Difference = { speed: 5e-3, way: 1e-3, force: 1e-3 };

/** Whether a difference is beyond a tolerance, or is no number. */
export const disagrees = (by: Difference, most: Difference): boolean =>
  !(by.speed <= most.speed && by.way <= most.way && by.force <= most.force);

/** Runs this solver for so many seconds. Throws when the run is over sooner. */
export function ownEnd(input: RunInput, seconds: number): End {
  const stepper = startRun(input);
  if (stepper.advance(seconds)) throw new Error(`the run ended before ${seconds} s`);
  const { frames, vehicles, speed, force, chainage } = stepper.finish();
  const last = frames - 1;
  return {
    speeds: [...speed.subarray(last * vehicles)],
    way: chainage[last * vehicles]! - chainage[0]!,
    force: force.subarray(last * (vehicles - 1)).reduce((most, one) => Math.max(most, Math.abs(one)), 0),
  };
}

export function difference(own: End, other: End): Difference {
  const lead = Math.abs(own.speeds[0]!);
  return {
    speed: own.speeds.reduce((most, v, i) => Math.max(most, Math.abs(other.speeds[i]! - v)), 0) / lead,
    way: Math.abs(other.way / own.way - 1),
    force: Math.abs(other.force / own.force - 1),
  };
}
