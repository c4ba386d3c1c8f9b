import { defaultForceModel, defaultRunOptions } from '../../src/core/dynamics/index.ts';
import type { ForceModel, RunInput } from '../../src/core/dynamics/types.ts';
import type { Vehicle } from '../../src/core/stock/types.ts';
import { helix, makeTrack, straight, type Track, transition } from '../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from '../core/dynamics/trains.ts';

/** The train every engine in the bench moves: one locomotive and wagons, given in the numbers of a plain axis. */
export const bench = {
  vehicles: 20,
  step: 0.001,
  seconds: 20,
  grade: 0.02,
  engineMass: 0.8,
  wagonMass: 0.06,
  stiffness: 2000,
  damping: 0.5,
  coulomb: 0.015,
  stallForce: 3,
  freeSpeed: 0.6,
  rotatingMass: 0.4,
  setting: 0.7,
  ramp: 1,
};

/** A train on the plain grade that general engines can do too: no curves. `slack` is in each joint, m. */
export interface Task {
  readonly name: string;
  readonly vehicles: number;
  readonly slack: number;
  readonly grade: number;
}

export const plain: Task = { name: 'plain grade', vehicles: bench.vehicles, slack: 0, grade: bench.grade };
/** 2 mm in every joint: the start runs through the train, and each coupling is met with a blow. */
export const slackRich: Task = { ...plain, name: 'slack-rich start', slack: 0.002 };
/** On the level, where one engine can move so many. */
export const long: Task = { name: '200 vehicles, level', vehicles: 200, slack: 0, grade: 0 };

/** `strength` multiplies the engine: its mass, its grip and its motor. */
const stock = (count: number, slack: number, strength = 1): Vehicle[] => {
  const half = { damping: 1, slack: slack / 2 };
  const truck = wagon(bench.wagonMass, half);
  const front = engine(
    strength * bench.engineMass,
    {
      stallForce: strength * bench.stallForce,
      freeSpeed: bench.freeSpeed,
      rotatingMass: strength * bench.rotatingMass,
      adhesion: 0.5,
      drivenMass: strength * bench.engineMass,
    },
    half,
  );
  return [front, ...Array.from({ length: count - 1 }, () => truck)];
};

const input = (track: Track, vehicles: Vehicle[], forces: Partial<ForceModel>, setting = bench.setting): RunInput =>
  trial(track, vehicles, [at(0, setting, bench.ramp)], {
    script: { timeLimit: 3600 },
    options: { ...defaultRunOptions, step: bench.step },
    forces: { ...defaultForceModel, ...forces },
  });

/** The plain grade that every engine can do: no curves, no slack. */
export const plainGrade = (task: Task = plain): RunInput =>
  input(level(0.14 * task.vehicles + 12, task.grade), stock(task.vehicles, task.slack), {
    curveFactor: 0,
    flangeFriction: 0,
  });

/** What the product is for: a helix with easements, curve drag and the compounding flange term. Longer trains have stronger engines. */
export function onHelix(vehicles = bench.vehicles, setting = bench.setting, turns = 4): RunInput {
  const radius = 0.6;
  const begin = 0.14 * vehicles + 1.2;
  const run = begin + 0.6 + turns * 2 * Math.PI * radius;
  const track = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [
      straight(begin),
      transition(0.3, 0, 1 / radius),
      helix(radius, turns),
      transition(0.3, 1 / radius, 0),
      straight(1),
    ],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: begin - 0.4, height: 0, curve: { length: 0.3 } },
        { chainage: run, height: bench.grade * (run - begin + 0.4) },
      ],
    },
  });
  return input(track, stock(vehicles, 0, Math.max(vehicles / bench.vehicles, 1)), {}, setting);
}

/** The helix for many settings of the controller: one route, `count` runs. */
export function ensembleOnHelix(count: number, seconds: number): RunInput[] {
  const first = onHelix();
  return Array.from({ length: count }, (_, m) => ({
    ...first,
    script: {
      ...first.script,
      timeLimit: seconds,
      orders: [at(0, 0.5 + (0.4 * m) / count, bench.ramp)],
    },
  }));
}
