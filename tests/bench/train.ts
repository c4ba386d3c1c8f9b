import { defaultForceModel, defaultRunOptions } from '../../src/core/dynamics/index.ts';
import type { ForceModel, RunInput } from '../../src/core/dynamics/types.ts';
import { helix, makeTrack, straight, type Track, transition } from '../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from '../core/dynamics/trains.ts';

/** The train every engine in the bench moves: one locomotive and nineteen wagons, given in the numbers of a plain axis. */
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

const stock = () => {
  const half = { damping: 1, slack: 0 };
  const truck = wagon(bench.wagonMass, half);
  const front = engine(
    bench.engineMass,
    {
      stallForce: bench.stallForce,
      freeSpeed: bench.freeSpeed,
      rotatingMass: bench.rotatingMass,
      adhesion: 0.5,
      drivenMass: bench.engineMass,
    },
    half,
  );
  return [front, ...Array.from({ length: bench.vehicles - 1 }, () => truck)];
};

const input = (track: Track, forces: Partial<ForceModel>): RunInput =>
  trial(track, stock(), [at(0, bench.setting, bench.ramp)], {
    script: { timeLimit: 3600 },
    options: { ...defaultRunOptions, step: bench.step },
    forces: { ...defaultForceModel, ...forces },
  });

/** The plain grade that every engine can do: no curves, no slack. */
export const plainGrade = () => input(level(200, bench.grade), { curveFactor: 0, flangeFriction: 0 });

/** What the product is for: a helix with easements, curve drag and the compounding flange term. */
export function onHelix(): RunInput {
  const radius = 0.6;
  const turns = 20;
  const run = 4 + 0.6 + turns * 2 * Math.PI * radius;
  const track = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [
      straight(4),
      transition(0.3, 0, 1 / radius),
      helix(radius, turns),
      transition(0.3, 1 / radius, 0),
      straight(1),
    ],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 3.6, height: 0, curve: { length: 0.3 } },
        { chainage: run, height: bench.grade * (run - 3.6) },
      ],
    },
  });
  return input(track, {});
}
