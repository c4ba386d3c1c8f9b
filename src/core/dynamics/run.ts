import { frontReach, makeJoint, rearReach, referenceSpacing } from '../stock/index.ts';
import type { Train } from '../stock/types.ts';
import { railAt } from '../track/index.ts';
import { type Chain, createChain } from './chain.ts';
import type { JointLaw } from './couplerLaw.ts';
import { createDriver } from './driver.ts';
import { createEventLog } from './eventLog.ts';
import { createRecorder } from './recorder.ts';
import { pivotShift, type RouteTables, routeRange, tabulateRoute } from './routeTables.ts';
import { createEngine } from './traction.ts';
import type { EnergyAccount, Outcome, Run, RunInput } from './types.ts';

/** A joint stiffer than this is as rigid as plastic gets, and stands for an unyielding bar, N/m. */
const RIGID = 1e6;
/** An engine that moves slower than this the way it is asked is getting nowhere, m/s. */
const CRAWL = 1e-3;

/** A run under way. */
export interface RunStepper {
  /** Runs on for this much trial time, s; true when the run is over. */
  advance(seconds: number): boolean;
  /** Share done, 0..1: of the way or of the time, whichever is further. */
  done(): number;
  /** Closes the account and hands over the result. */
  finish(): Run;
}

/**
 * Makes a train ready at the start of its script.
 *
 * @throws RangeError when the train has no vehicle or does not stand on the track, or times are not usable
 */
export function startRun(input: RunInput): RunStepper {
  const { path, train, script, options } = input;
  const { track } = path;
  checkRun(input);
  const startRail = railAt(track, script.start) - frontReach(train.vehicles[0]!);
  const { from, to } = routeRange(track, startRail, trainLength(train));
  const tables = tabulateRoute(track, train, options.forces, from, to);
  const engines = train.vehicles.flatMap((vehicle, i) => (vehicle.drive ? [createEngine(vehicle, i)] : []));
  const chain = createChain(
    train,
    tables,
    jointLaws(train),
    releases(train),
    engines,
    options.forces,
    options.step,
    standingPlaces(tables, train, startRail),
  );
  const driver = createDriver(script, engines, track);
  const recorder = createRecorder(chain);
  const log = createEventLog(
    chain,
    Float64Array.from(train.vehicles, (v) => v.mass * options.forces.gravity),
  );
  const perFrame = Math.round(options.frameInterval / options.step);
  const finishRail = railAt(track, script.finish);
  const firstReach = frontReach(train.vehicles[0]!);
  const lastReach = rearReach(train.vehicles[train.vehicles.length - 1]!);
  const last = train.vehicles.length - 1;
  const potentialAtStart = chain.potential();
  const storedAtStart = chain.stored();

  let steps = 0;
  let stuckSince = 0;
  let outcome: Outcome | null = null;
  recorder.take(0);

  const leading = () => chain.sigma(0) + firstReach;

  function step(): void {
    const time = steps * options.step;
    // The setting at the step's middle: a ramp is then followed to second order.
    driver.drive(time + 0.5 * options.step, leading());
    chain.advance(1);
    steps++;
    const now = steps * options.step;
    log.afterStep(now);
    if (steps % perFrame === 0) {
      log.atFrame(now);
      recorder.take(now);
    }
    conclude(now);
  }

  function conclude(now: number): void {
    if (leading() >= finishRail) end('arrived', now, 0);
    else if (chain.sigma(last) - lastReach < 0 && chain.speed(last) < 0) end('end-of-track', now, last);
    else if (now >= script.timeLimit - 0.5 * options.step) end('time-limit', now, 0);
    else {
      const lost = driver.turning ? -1 : stuckEngine();
      if (lost < 0) stuckSince = now;
      else if (now - stuckSince > options.stallPatience) {
        log.note('stall', now, engines[lost]!.vehicle, chain.speed(engines[lost]!.vehicle));
        outcome = 'stalled';
      }
    }
  }

  /** The first engine that is asked to move and does not, or -1. */
  function stuckEngine(): number {
    for (let k = 0; k < engines.length; k++) {
      const { setting, vehicle } = engines[k]!;
      if (setting !== 0 && chain.speed(vehicle) * Math.sign(setting) < CRAWL) return k;
    }
    return -1;
  }

  function end(how: 'arrived' | 'end-of-track' | 'time-limit', now: number, vehicle: number): void {
    log.note(how, now, vehicle, chain.speed(vehicle));
    outcome = chain.parted.length > 0 ? 'parted' : how;
  }

  return {
    advance(seconds) {
      const until = steps + Math.max(1, Math.round(seconds / options.step));
      while (outcome === null && steps < until) step();
      return outcome !== null;
    },
    done() {
      const way = (leading() - startRail - firstReach) / Math.max(finishRail - startRail - firstReach, 1e-9);
      return outcome !== null ? 1 : Math.min(Math.max(way, (steps * options.step) / script.timeLimit, 0), 1);
    },
    finish() {
      if (steps % perFrame !== 0) recorder.take(steps * options.step);
      return {
        ...recorder.finish(),
        interval: perFrame * options.step,
        events: log.events,
        outcome: outcome ?? 'time-limit',
        energy: account(chain, potentialAtStart, storedAtStart),
        steps,
      };
    },
  };
}

/**
 * Runs a train through its script and returns the whole run. A pure function of its input: bit-identical wherever and
 * whenever it is called.
 */
export function run(input: RunInput): Run {
  const stepper = startRun(input);
  while (!stepper.advance(1));
  return stepper.finish();
}

function account(chain: Chain, potentialAtStart: number, storedAtStart: number): EnergyAccount {
  const { motor, rolling, curve, flange, coupler, slip, holding } = chain.state.losses;
  const kinetic = chain.kinetic();
  const potential = chain.potential() - potentialAtStart;
  const stored = chain.stored() - storedAtStart;
  const spent = kinetic + potential + stored + rolling + curve + flange + coupler + slip + holding;
  return { motor, kinetic, potential, stored, rolling, curve, flange, coupler, slip, holding, residual: motor - spent };
}

/** Forces of every joint in a form the chain can use: a rigid bar becomes a very stiff one. */
export function jointLaws(train: Train): JointLaw[] {
  return joints(train).map((joint) => ({
    draftStiffness: Math.min(joint.draftStiffness, RIGID),
    buffStiffness: Math.min(joint.buffStiffness, RIGID),
    damping: Number.isFinite(joint.damping) ? joint.damping : 0,
    draftPlay: joint.slack / 2,
    buffPlay: joint.slack / 2,
  }));
}

export const releases = (train: Train) => Float64Array.from(joints(train), (joint) => joint.release);

const joints = (train: Train) =>
  train.vehicles.slice(1).map((trailing, j) => makeJoint(train.vehicles[j]!.rear.coupling, trailing.front.coupling));

/** From leading to trailing body end on straight track at free length, m. */
export function trainLength(train: Train): number {
  const { vehicles } = train;
  let length = frontReach(vehicles[0]!) + rearReach(vehicles[vehicles.length - 1]!);
  for (let j = 0; j + 1 < vehicles.length; j++) length += referenceSpacing(vehicles[j]!, vehicles[j + 1]!);
  return length;
}

/** Rail distances of all origins with the first at `sigma0` and every joint at its free length. */
function standingPlaces(tables: RouteTables, train: Train, sigma0: number): Float64Array {
  const places = new Float64Array(train.vehicles.length);
  places[0] = sigma0;
  for (let j = 0; j + 1 < places.length; j++) {
    const ahead = places[j]!;
    const spacing = tables.spacing[j]!;
    let behind = ahead - spacing;
    // The correction hardly depends on where it is taken: three rounds fix it to rounding.
    for (let round = 0; round < 3; round++) {
      behind = ahead - spacing + pivotShift(tables, j, 0.5 * (ahead + behind));
    }
    places[j + 1] = behind;
  }
  return places;
}

export function checkRun({ path, train, script, options }: RunInput): void {
  const length = path.track.length;
  if (train.vehicles.length === 0) throw new RangeError(`train ${train.name} has no vehicles`);
  if (!(options.step > 0) || !(options.frameInterval >= options.step)) {
    throw new RangeError(
      `step must be above 0 s and at most the frame interval, got ${options.step} s and ${options.frameInterval} s`,
    );
  }
  if (!(script.timeLimit > 0)) throw new RangeError(`time limit must be above 0 s, got ${script.timeLimit} s`);
  const tail = script.start - trainLength(train);
  if (tail < 0 || script.start > length) {
    throw new RangeError(
      `train ${train.name} does not stand on the track: its ends would be at ${tail.toFixed(3)} m and ` +
        `${script.start.toFixed(3)} m, the track runs from 0 to ${length.toFixed(3)} m`,
    );
  }
  if (!(script.finish > script.start) || script.finish > length) {
    throw new RangeError(
      `finish must lie after the start at ${script.start.toFixed(3)} m and on the track, at most ${length.toFixed(3)} m, ` +
        `got ${script.finish.toFixed(3)} m`,
    );
  }
}
