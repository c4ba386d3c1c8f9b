import { frontReach, rearReach } from '../stock/index.ts';
import { railAt } from '../track/index.ts';
import { drivenNormalForce } from './adhesion.ts';
import type { JointLaw } from './couplerLaw.ts';
import { holdingSetting, shareDemand } from './engineShares.ts';
import { jointLaws } from './jointLaws.ts';
import { sketchRoute } from './routeSketch.ts';
import { gripShareAt, pivotShift, type RouteTables, routeRange, VEHICLE_STRIDE } from './routeTables.ts';
import { checkRun, trainLength } from './run.ts';
import type { Run, RunInput } from './types.ts';

/**
 * The quasi-static pass: the train at every place of its route as if it had always run there at its balanced speed.
 *
 * No masses, no slack in motion, no start: at each station the coupling forces follow from end to end of the train by
 * statics, and the speed is the one at which motors give what the train asks. It answers in milliseconds, for feedback
 * while something is dragged; where motion is steady it agrees with the full run.
 */
export interface SteadyOptions {
  /** Way between stations, m; also the node of the route's tables. */
  readonly every: number;
  /** Speed setting, 0..1: of all engines, or of each in the train's order. */
  readonly setting: number | readonly number[];
  /** Speed a load-compensated controller holds, m/s, as far as the settings reach; absent: the settings themselves. */
  readonly hold?: number;
}

/**
 * Most rounds at a station, and the change of speed at which they end, as a share of it. All is linear but flange friction and the
 * speed term of rolling, and begun from the station before: two rounds do on a steady grade.
 */
const ROUNDS = 8;
const SETTLED = 1e-9;

/** What one station's statics need, by vehicle; forces N. */
interface Station {
  gravity: Float64Array;
  dry: Float64Array;
  viscous: Float64Array;
  flange: Float64Array;
  cosine: Float64Array;
}

/**
 * Runs the quasi-static pass over the way from the script's start to its finish.
 *
 * @returns a run with one frame a station; `time` is what the balanced speed would take. Events are left out, the
 *   energy account is zero; the outcome is `stalled` when some station has no speed at which the train keeps moving.
 * @throws RangeError as `startRun`
 */
export function steadyRun(input: RunInput, { every, setting, hold }: SteadyOptions): Run {
  const { path, train, script, options } = input;
  const { track } = path;
  checkRun(input);
  const { vehicles } = train;
  const n = vehicles.length;
  const first = railAt(track, script.start) - frontReach(vehicles[0]!);
  const way = railAt(track, script.finish) - railAt(track, script.start);
  const { from } = routeRange(track, first, trainLength(train));
  const tables = sketchRoute(track, train, options.forces, from, first + way + rearReach(vehicles[n - 1]!), every);
  const engines = vehicles.flatMap(({ drive }, i) => (drive ? [{ drive, i }] : []));
  const laws = jointLaws(train);
  const k = engines.length;
  const frames = Math.floor(way / every) + 1;

  const columns = (width: number) => new Float64Array(frames * width);
  const run: Run = {
    frames,
    vehicles: n,
    interval: every,
    time: columns(1),
    chainage: columns(n),
    speed: columns(n),
    force: columns(n - 1),
    draftPeak: columns(n - 1),
    buffPeak: columns(n - 1),
    extension: columns(n - 1),
    locomotives: Int32Array.from(engines, ({ i }) => i),
    setting: columns(k),
    rimSpeed: columns(k),
    railForce: columns(k),
    gripUse: columns(k),
    motorLimit: columns(k),
    gripLimit: columns(k),
    demand: columns(k),
    events: [],
    outcome: 'arrived',
    energy: {
      motor: 0,
      kinetic: 0,
      potential: 0,
      stored: 0,
      rolling: 0,
      curve: 0,
      flange: 0,
      coupler: 0,
      slip: 0,
      holding: 0,
      residual: 0,
    },
    steps: 0,
  };

  const station: Station = {
    gravity: new Float64Array(n),
    dry: new Float64Array(n),
    viscous: new Float64Array(n),
    flange: new Float64Array(n),
    cosine: new Float64Array(n),
  };
  const { chainage, speed: speeds, force: joints, draftPeak, buffPeak, extension } = run;
  const places = new Float64Array(n);
  const stretch = new Float64Array(n);
  const forces = new Float64Array(n);
  const pulls = new Float64Array(k);
  const drives = engines.map(({ drive }) => drive);
  const most = drives.map((_, e) => (typeof setting === 'number' ? setting : (setting[e] ?? 0)));
  const settings = Float64Array.from(most);
  const drivenMass = engines.reduce((sum, { drive }) => sum + drive.drivenMass, 0);
  let speed = 0;
  let stalls = false;

  for (let f = 0; f < frames; f++) {
    places[0] = first + f * every;
    for (let j = 0; j + 1 < n; j++) places[j + 1] = behind(tables, j, places[j]!, stretch[j]!);
    ask(tables, input, places, station, chainage, f * n);

    let asked = 0;
    for (let round = 0; round < ROUNDS; round++) {
      // What the train asks at this speed: the pull at which the last coupling comes out slack.
      asked = demandOf(station, speed, engines, pulls, forces);
      if (hold !== undefined && k > 0) {
        const alike = holdingSetting(drives, hold, asked, 1);
        for (let e = 0; e < k; e++) settings[e] = Math.min(alike, most[e]!);
      }
      const before = speed;
      speed = shareDemand(drives, settings, asked, pulls);
      if (Math.abs(speed - before) <= SETTLED * speed) break;
    }
    if (speed === 0) stalls = true;

    demandOf(station, speed, engines, pulls, forces);

    run.time[f] = f === 0 ? 0 : run.time[f - 1]! + every / Math.max(speed, 1e-3);
    speeds.fill(speed, f * n, (f + 1) * n);
    for (let j = 0, to = f * (n - 1); j + 1 < n; j++, to++) {
      const force = forces[j]!;
      const stretched = stretchOf(laws[j]!, force);
      stretch[j] = stretched;
      joints[to] = force;
      draftPeak[to] = Math.max(force, 0);
      buffPeak[to] = Math.min(force, 0);
      extension[to] = stretched;
    }
    for (let e = 0; e < k; e++) {
      const { drive, i } = engines[e]!;
      const pull = forces[i]! - (i > 0 ? forces[i - 1]! : 0);
      const weighing = options.forces.gravity * station.cosine[i]! * gripShareAt(tables, i, places[i]!);
      const grip = drive.adhesion * drivenNormalForce(drive, weighing, pull);
      run.rimSpeed[f * k + e] = speed;
      run.railForce[f * k + e] = pulls[e]!;
      run.gripLimit[f * k + e] = grip;
      run.gripUse[f * k + e] = grip > 0 ? Math.abs(pulls[e]!) / grip : 0;
      run.setting[f * k + e] = settings[e]!;
      run.motorLimit[f * k + e] = drive.stallForce * settings[e]!;
      run.demand[f * k + e] = (asked * drive.drivenMass) / drivenMass;
    }
  }
  return stalls ? { ...run, outcome: 'stalled' } : run;
}

/** Place of the vehicle behind joint j, the joint stretched by `stretch`, m. */
function behind(tables: RouteTables, j: number, ahead: number, stretch: number): number {
  const spacing = tables.spacing[j]! + stretch;
  return ahead - spacing + pivotShift(tables, j, ahead - 0.5 * spacing);
}

/** Looks up what the route asks of every vehicle at its place, and its chainage there, m, into `chainage` from index `from` on. */
function ask(
  tables: RouteTables,
  { train, options }: RunInput,
  places: Float64Array,
  { gravity: pulled, dry, viscous, flange, cosine: cosines }: Station,
  chainage: Float64Array,
  from: number,
): void {
  const { vehicle: rows, vehicleAt, origin, node, nodes, chainage: along } = tables;
  const { gravity, flangeFriction } = options.forces;
  const { vehicles } = train;
  for (let i = 0; i < vehicles.length; i++) {
    const { mass, rolling } = vehicles[i]!;
    const x = (places[i]! - origin) / node;
    const k = Math.min(Math.max(Math.floor(x), 0), nodes - 2);
    const t = x - k;
    const row = vehicleAt[i]! + k * VEHICLE_STRIDE;
    const next = row + VEHICLE_STRIDE;
    const weight = mass * gravity;
    const cosine = rows[row + 1]! + (rows[next + 1]! - rows[row + 1]!) * t;
    const here = along[k]!;
    chainage[from + i] = here + (along[k + 1]! - here) * t;
    cosines[i] = cosine;
    pulled[i] = weight * (rows[row]! + (rows[next]! - rows[row]!) * t);
    dry[i] = weight * (cosine * rolling.coulomb + rows[row + 2]! + (rows[next + 2]! - rows[row + 2]!) * t);
    viscous[i] = weight * cosine * rolling.perSpeed;
    flange[i] = flangeFriction * (rows[row + 3]! + (rows[next + 3]! - rows[row + 3]!) * t);
  }
}

/**
 * Follows the coupling forces from the leading end to the last with the engines' pulls given, N, into `forces`.
 * Returns the pull the train asks in all: what was given less what is left over behind the last vehicle.
 */
function demandOf(
  { gravity, dry, viscous, flange }: Station,
  speed: number,
  engines: readonly { i: number }[],
  pulls: ArrayLike<number>,
  forces: Float64Array,
): number {
  let ahead = 0;
  let given = 0;
  let e = 0;
  for (let i = 0; i < gravity.length; i++) {
    let left = ahead - gravity[i]! - dry[i]! - viscous[i]! * speed;
    if (engines[e]?.i === i) {
      left += pulls[e]!;
      given += pulls[e]!;
      e++;
    }
    // C = left - f·|ahead + C|: the sum S = ahead + C has the sign of ahead + left.
    const sum = ahead + left;
    const rubbing = flange[i]!;
    // Most vehicles stand in no curve: nothing to divide by then.
    ahead = (rubbing === 0 || sum === 0 ? sum : sum / (sum > 0 ? 1 + rubbing : 1 - rubbing)) - ahead;
    forces[i] = ahead;
  }
  return given - ahead;
}

/** How far a joint stretches under a steady force, m; in the middle of its slack under none. */
function stretchOf(
  { draftStiffness, buffStiffness, draftPlay, buffPlay, draftSecond, buffSecond }: JointLaw,
  force: number,
): number {
  if (force > 0) return draftPlay + travelOf(draftStiffness, draftSecond, force);
  return force < 0 ? -buffPlay - travelOf(buffStiffness, buffSecond, -force) : 0;
}

/** Travel of a spring of one or two stages under a force, m. */
function travelOf(stiffness: number, second: JointLaw['draftSecond'], force: number): number {
  if (second === undefined || force <= stiffness * second.from) return force / stiffness;
  return second.from + (force - stiffness * second.from) / second.stiffness;
}
