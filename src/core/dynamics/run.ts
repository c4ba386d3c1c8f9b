import { frontReach, rearReach, referenceSpacing } from '../stock/index.ts';
import type { Train } from '../stock/types.ts';
import { railAt } from '../track/index.ts';
import { type Chain, CRAWL, clearGround, createChain, type Ground, layGround } from './chain.ts';
import { averagedForce } from './couplerLaw.ts';
import { createDriver } from './driver.ts';
import { createEventLog } from './eventLog.ts';
import { jointLaws, releases } from './jointLaws.ts';
import { createRecorder } from './recorder.ts';
import { routeRange, tabulateRoute } from './routeTables.ts';
import { standingPlaces } from './standingPlaces.ts';
import type { EnergyAccount, Outcome, Run, RunInput } from './types.ts';

/** A run under way. */
export interface RunStepper {
  /** Runs on for this much trial time, s; true when the run is over. */
  advance(seconds: number): boolean;
  /** Share done, 0..1: of the way or of the time, whichever is further. */
  done(): number;
  /** Closes the account and hands over the result; the run goes no further. */
  finish(): Run;
}

/**
 * Makes a train ready at the start of its script.
 *
 * @throws RangeError when the train has no vehicle or does not stand on the track, or times are not usable
 */
export function startRun(input: RunInput): RunStepper {
  checkRun(input);
  const ground = groundFor(input);
  const stepper = startOn(ground, input);
  let result: Run | null = null;
  return {
    advance: (seconds) => result !== null || stepper.advance(seconds),
    done: () => (result === null ? stepper.done() : 1),
    finish() {
      if (result === null) {
        result = stepper.finish();
        stepper.leave();
        clearGround(ground);
      }
      return result;
    },
  };
}

/** Rail distance of the first origin at the start, m. */
const startRailOf = ({ path, train, script }: RunInput) =>
  railAt(path.track, script.start) - frontReach(train.vehicles[0]!);

/** What the route asks of the train of a run, wherever the run may take it. */
export function groundFor(input: RunInput): Ground {
  const { track } = input.path;
  const { from, to } = routeRange(track, startRailOf(input), trainLength(input.train));
  return layGround(tabulateRoute(track, input.train, input.options.forces, from, to));
}

/** A run on ground that outlives it. */
export interface GroundRun extends RunStepper {
  /** Clears the ground for the next run; after `finish`. */
  leave(): void;
}

/** As `startRun` on ground laid before: that of `groundFor` this input, which is known to be sound, with no train on it. */
export function startOn(ground: Ground, input: RunInput): GroundRun {
  const { path, train, script, options, stretch } = input;
  const { track } = path;
  const startRail = startRailOf(input);
  const laws = jointLaws(train);
  const chain = createChain(
    train,
    ground,
    laws,
    releases(train),
    options.forces,
    options.step,
    standingPlaces(ground.tables, train, startRail, stretch),
  );
  const { engines } = chain;
  const driver = createDriver(script, engines, track);
  const recorder = createRecorder(chain, options.frameBytes);
  const startForces = laws.map(
    (law, j) => averagedForce(law, stretch?.[j] ?? 0, 0, options.step, { force: 0, slope: 0 }).force,
  );
  const log = createEventLog(
    chain,
    Float64Array.from(train.vehicles, (v) => v.mass * options.forces.gravity),
    startForces,
  );
  const perFrame = Math.round(options.frameInterval / options.step);
  const finishRail = railAt(track, script.finish);
  const endRail = railAt(track, track.length);
  const firstReach = frontReach(train.vehicles[0]!);
  const lastReach = rearReach(train.vehicles[train.vehicles.length - 1]!);
  const last = train.vehicles.length - 1;
  const potentialAtStart = chain.potential();
  const storedAtStart = chain.stored();

  let steps = 0;
  let outcome: Outcome | null = null;
  let shutOff = false;
  /** Steps since the whole train has stood with its engines at rest, after the driver shut off. */
  let stood = 0;
  recorder.take(0);
  if (stretch !== undefined) chain.setFrameForces(startForces);

  const leading = () => chain.lead() + firstReach;

  /** Steps on, at most to `until`: to the next frame, order or event, or one step where each wants watching. */
  function go(until: number): void {
    const time = steps * options.step;
    // A ramp is followed at the step's middle, which is of second order.
    driver.obey(time + 0.5 * options.step, leading());
    const untilDue = Math.floor((Math.min(driver.dueTime(), script.timeLimit) - time) / options.step);
    const alone = log.watching() || shutOff;
    const most = alone ? 1 : Math.max(Math.min(until - steps, perFrame - (steps % perFrame), untilDue), 1);
    const reach = Math.min(finishRail, driver.dueLeading()) - firstReach;
    steps += chain.advanceWatched(most, reach, lastReach, options.stallPatience);
    const now = steps * options.step;
    log.afterStep(now);
    if (steps % perFrame === 0) {
      recorder.take(now);
      log.atFrame(now);
    }
    conclude(now);
  }

  function conclude(now: number): void {
    if (shutOff ? comeToRest() || leading() >= endRail : leading() >= finishRail && ends()) {
      end(script.stop !== undefined && shutOff && leading() >= endRail ? 'end-of-track' : 'arrived', now, 0);
    } else if (chain.tail() - lastReach < 0 && chain.tailSpeed() < 0) end('end-of-track', now, last);
    else if (now >= script.timeLimit - 0.5 * options.step) end('time-limit', now, 0);
    else {
      if (!shutOff && leading() >= finishRail) shut(now);
      else if (now - (steps - chain.stuckFor()) * options.step > options.stallPatience) {
        const { vehicle } = stuckEngine();
        log.note('stall', now, vehicle, chain.speed(vehicle));
        outcome = 'stalled';
      }
    }
  }

  /** Whether the run is over as the leading end arrives: the train is whole, and is not to come to a stand. */
  const ends = () => chain.apart === 0 && script.stop === undefined;

  /**
   * The train has arrived and is to stop, or the leading part has arrived alone: its driver shuts off, and the train, or what was lost, runs on until
   * it stands or leaves the track.
   */
  function shut(now: number): void {
    log.note('arrived', now, 0, chain.speed(0));
    driver.stop(script.stop === undefined ? undefined : { start: now + 0.5 * options.step, ramp: script.stop });
    shutOff = true;
  }

  /** A train that has stood through a whole step, its engines off and at rest, would stand for ever: nothing of its state is left to change. */
  function comeToRest(): boolean {
    if (script.stop === undefined) return atRest();
    const off = engines.every(({ setting, rimSpeed }) => setting === 0 && rimSpeed === 0);
    stood = off && atRest() ? stood + 1 : 0;
    return stood > 1;
  }

  function atRest(): boolean {
    for (let i = 0; i <= last; i++) if (chain.speed(i) !== 0) return false;
    return true;
  }

  /** The first engine that is asked to move and does not; there is one. */
  const stuckEngine = () =>
    engines.find(({ setting, speed }) => setting !== 0 && speed * Math.sign(setting) < CRAWL) ?? engines[0]!;

  function end(how: 'arrived' | 'end-of-track' | 'time-limit', now: number, vehicle: number): void {
    if (!shutOff || how !== 'arrived') log.note(how, now, vehicle, chain.speed(vehicle));
    outcome = chain.apart > 0 ? 'parted' : how;
  }

  return {
    advance(seconds) {
      const until = steps + Math.max(1, Math.round(seconds / options.step));
      while (outcome === null && steps < until) go(until);
      return outcome !== null;
    },
    done() {
      const way = (leading() - startRail - firstReach) / Math.max(finishRail - startRail - firstReach, 1e-9);
      return outcome !== null ? 1 : Math.min(Math.max(way, (steps * options.step) / script.timeLimit, 0), 1);
    },
    leave: chain.leave,
    finish() {
      if (steps % perFrame !== 0) recorder.take(steps * options.step);
      const recorded = recorder.finish();
      return {
        ...recorded,
        interval: perFrame * recorder.thinning * options.step,
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
  return toEnd(startRun(input));
}

/** Runs on to the end. */
export function toEnd(stepper: RunStepper): Run {
  while (!stepper.advance(1));
  return stepper.finish();
}

function account(chain: Chain, potentialAtStart: number, storedAtStart: number): EnergyAccount {
  const { motor, rolling, curve, flange, coupler, slip, holding } = chain.losses();
  const kinetic = chain.kinetic();
  const potential = chain.potential() - potentialAtStart;
  const stored = chain.stored() - storedAtStart;
  const spent = kinetic + potential + stored + rolling + curve + flange + coupler + slip + holding;
  return { motor, kinetic, potential, stored, rolling, curve, flange, coupler, slip, holding, residual: motor - spent };
}

/** From leading to trailing body end on straight track at free length, m. */
export function trainLength(train: Train): number {
  const { vehicles } = train;
  let length = frontReach(vehicles[0]!) + rearReach(vehicles[vehicles.length - 1]!);
  for (let j = 0; j + 1 < vehicles.length; j++) length += referenceSpacing(vehicles[j]!, vehicles[j + 1]!);
  return length;
}

export function checkRun({ path, train, script, options, stretch }: RunInput): void {
  const length = path.track.length;
  if (train.vehicles.length === 0) throw new RangeError(`train ${train.name} has no vehicles`);
  if (!(options.step > 0) || !(options.frameInterval >= options.step)) {
    throw new RangeError(
      `step must be above 0 s and at most the frame interval, got ${options.step} s and ${options.frameInterval} s`,
    );
  }
  if (script.stop !== undefined && !(script.stop >= 0)) {
    throw new RangeError(`a train stops over at least 0 s, got ${script.stop} s`);
  }
  if (!(script.timeLimit > 0)) throw new RangeError(`time limit must be above 0 s, got ${script.timeLimit} s`);
  const joints = train.vehicles.length - 1;
  if (stretch !== undefined && !(stretch.length === joints && stretch.every(Number.isFinite))) {
    throw new RangeError(`train ${train.name} has ${joints} joints, got the stretch of ${stretch.length}`);
  }
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
