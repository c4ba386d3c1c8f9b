import type { Vehicle } from '../../stock/types.ts';
import type { Situation, Trial } from '../situation.ts';
import type { Candidate } from './explainer.ts';
import { droppable } from './loads.ts';
import { getsOver, reserve } from './reach.ts';
import { type RoutePull, routePull } from './routePull.ts';
import { leastPassing } from './search.ts';
import { type TrainChange, withVehicles } from './steadyTrial.ts';

/** Weight is added in steps of this, kg: the strip lead a builder cuts. */
const ballastStep = 0.005;

/** More than this share of its own mass fits into no engine. */
const mostBallast = 0.6;

/** The controller is set to a hundredth: finer than a knob is read. */
export const settingSteps = 100;

/**
 * What keeps a train going and its wheels from spinning over its whole route, not only where it came to grief: the least of each that the
 * quasi-static pass with the changed train lets through. A failing finding is to pass, a near one to be near no more. Where the load on the
 * route asks too much: fewer vehicles, weight on the wheels, or more of the controller. Where it does not, the hand does: less of it.
 */
export function pullCures(situation: Situation): Candidate[] {
  const { trial, worst, definition } = situation;
  const now = routePull(trial, {});
  if (now === null) return [];
  const wanted = worst.margin < 0 ? reserve : definition.near;
  const own = (pull: RoutePull): number => (definition.id === 'stall' ? pull.stall : pull.spin);
  if (getsOver(now, wanted)) return gentler(trial, now, wanted);
  const candidates = [
    ...fewer(trial, wanted, own),
    ...(now.byGrip || now.spin < wanted ? heavier(trial, (pull) => getsOver(pull, wanted), own) : []),
    ...(now.byGrip ? [] : faster(trial, wanted, own)),
  ];
  return candidates.map((candidate) => ({ ...candidate, from: own(now) }));
}

function fewer(trial: Trial, wanted: number, own: (pull: RoutePull) => number): Candidate[] {
  const has = droppable(trial.context).length;
  const pullWith = (by: number): RoutePull | null => {
    const change = withVehicles(trial, has - by);
    return change === null ? null : routePull(trial, change);
  };
  const by = leastPassing(1, has - 1, (number) => {
    const pull = pullWith(number);
    return pull !== null && getsOver(pull, wanted);
  });
  const pull = by === null ? null : pullWith(by);
  if (by === null || pull === null) return [];
  return [{ cure: { kind: 'fewer-vehicles', by }, expected: own(pull) }];
}

/** Weight over the driven wheels of every engine, which has to be carried up as well; where not even the most is enough, that. */
function heavier(trial: Trial, passes: (pull: RoutePull) => boolean, own: (pull: RoutePull) => number): Candidate[] {
  const { vehicles } = trial.context.train;
  const lightest = vehicles.reduce((least, { drive, mass }) => (drive === null ? least : Math.min(least, mass)), 1);
  const most = Math.floor((mostBallast * lightest) / ballastStep);
  const pullWith = (steps: number): RoutePull | null =>
    routePull(trial, { vehicles: vehicles.map((vehicle) => ballasted(vehicle, steps * ballastStep)) });
  const enough = (number: number): boolean => {
    const pull = pullWith(number);
    return pull !== null && passes(pull);
  };
  const steps = leastPassing(1, most, enough) ?? most;
  const pull = steps < 1 ? null : pullWith(steps);
  return pull === null ? [] : [{ cure: { kind: 'add-engine-weight', by: steps * ballastStep }, expected: own(pull) }];
}

function ballasted(vehicle: Vehicle, by: number): Vehicle {
  const { drive, mass } = vehicle;
  return drive === null
    ? vehicle
    : { ...vehicle, mass: mass + by, drive: { ...drive, drivenMass: drive.drivenMass + by } };
}

/** The highest setting of a trial's script, in steps. */
export const highestStep = ({ driven }: Trial): number =>
  settingSteps * (driven?.script.orders.reduce((most, { setting }) => Math.max(most, setting), 0) ?? 0);

/** Whether a train at its steady speed is through before the trial's time is up. */
const inTime = ({ driven }: Trial, { time }: RoutePull): boolean => driven !== null && time <= driven.script.timeLimit;

/** More of the controller, until the motors give enough and the train is through in time. */
function faster(trial: Trial, wanted: number, own: (pull: RoutePull) => number): Candidate[] {
  const now = highestStep(trial);
  const pullAt = (step: number): RoutePull | null => routePull(trial, { factor: step / now });
  const step = leastPassing(Math.floor(now) + 1, settingSteps, (number) => {
    const pull = pullAt(number);
    return pull !== null && getsOver(pull, wanted) && inTime(trial, pull);
  });
  const pull = step === null ? null : pullAt(step);
  if (step === null || pull === null) return [];
  return [{ cure: { kind: 'setting', to: step / settingSteps }, expected: own(pull) }];
}

/**
 * Less of the controller: the most at which not even motors at standstill outdo the grip, so that no start and no jerk can. Where the train
 * would not get over at that, weight until the grip does as well.
 */
function gentler(trial: Trial, now: RoutePull, wanted: number): Candidate[] {
  const highest = highestStep(trial);
  const step = Math.floor((highest * (1 + now.standing)) / (1 + wanted));
  if (step >= highest) return [];
  const change: TrainChange = { factor: step / highest };
  const slower = step < 1 ? null : routePull(trial, change);
  if (slower !== null && getsOver(slower, wanted) && inTime(trial, slower)) {
    return [{ cure: { kind: 'setting', to: step / settingSteps }, expected: Math.min(slower.stall, slower.standing) }];
  }
  const holds = (pull: RoutePull): boolean => getsOver(pull, wanted) && pull.standing >= wanted;
  return heavier(trial, holds, ({ standing }) => standing);
}
