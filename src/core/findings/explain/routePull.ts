import { frontReach } from '../../stock/index.ts';
import type { Trial } from '../situation.ts';
import { steadyTrial, type TrainChange } from './steadyTrial.ts';

/** What pull a train has in hand over its whole route at its steady speed; shares are of what is asked. */
export interface RoutePull {
  /** Least (available - needed)/needed of all engines together. */
  readonly stall: number;
  /** Least (grip - asked)/asked of any engine. */
  readonly spin: number;
  /** Least (grip - motor)/motor of any engine, the motor at standstill: from 0 no start and no jerk can break the wheels loose. */
  readonly standing: number;
  /** Where `stall` is least: path chainage of the first engine, m; forces, N; whether grip is the less there. */
  readonly chainage: number;
  readonly needed: number;
  readonly available: number;
  readonly byGrip: boolean;
  /** What the way takes, s. */
  readonly time: number;
}

/** Passes already made for a trial: a stall and a spin, their cures and what passes at most all ask for the same ones. */
const known = new WeakMap<Trial, Map<string, RoutePull | null>>();

/** The pull in hand with the train changed; null where the route cannot be told or nothing ever needs pulling. */
export function routePull(trial: Trial, change: TrainChange): RoutePull | null {
  const passes = known.get(trial) ?? new Map<string, RoutePull | null>();
  known.set(trial, passes);
  const { vehicles = trial.context.train.vehicles, factor = 1 } = change;
  const key = [factor, ...vehicles.map(({ name, mass }) => `${name} ${mass}`)].join(';');
  let pull = passes.get(key);
  if (pull === undefined) {
    pull = pullAlong(trial, change);
    passes.set(key, pull);
  }
  return pull;
}

function pullAlong(trial: Trial, change: TrainChange): RoutePull | null {
  const steady = steadyTrial(trial, change);
  if (steady === null) return null;
  const { run, train } = steady.context;
  const width = run.locomotives.length;
  const lead = frontReach(train.vehicles[0]);
  const stallForce = Float64Array.from(run.locomotives, (vehicle) => train.vehicles[vehicle].drive?.stallForce ?? 0);
  let worst: RoutePull | null = null;
  let spin = Number.POSITIVE_INFINITY;
  let standing = Number.POSITIVE_INFINITY;
  for (let f = 0; f < run.frames; f++) {
    const settings = steady.settings(run.chainage[f * run.vehicles] + lead);
    let needed = 0;
    let available = 0;
    let byGrip = 0;
    let ordered = false;
    for (let k = 0; k < width; k++) {
      const at = f * width + k;
      const grip = run.gripLimit[at];
      const motor = stallForce[k] * settings[k];
      needed += run.demand[at];
      if (!(motor > 0)) continue;
      ordered = true;
      available += Math.min(motor, grip);
      if (grip < motor) byGrip += grip;
      spin = Math.min(spin, grip / Math.abs(run.railForce[at]) - 1);
      standing = Math.min(standing, grip / motor - 1);
    }
    // Where the knob is off, or set back, the way ahead asks for nothing.
    if (!ordered || !(needed > 0)) continue;
    const stall = available / needed - 1;
    if (worst !== null && worst.stall <= stall) continue;
    worst = {
      stall,
      spin,
      standing,
      chainage: run.chainage[f * run.vehicles + run.locomotives[0]],
      needed,
      available,
      byGrip: 2 * byGrip > available,
      time: run.time[run.frames - 1],
    };
  }
  return worst === null ? null : { ...worst, spin, standing };
}
