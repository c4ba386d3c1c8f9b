import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import type { RunInput, SpeedOrder } from '../../../src/core/dynamics/types.ts';
import { placeVehicle } from '../../../src/core/stock/index.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, helix, makeTrack, straight, type Track, transition } from '../../../src/core/track/index.ts';
import type { GradePoint, PlanElement } from '../../../src/core/track/types.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

/*
 * Every way a train can run smoothly closes its account to 1e-6 of the work that was done, and what is booked as height, motion, rolling and
 * work of the motors is what the geometry of the track, the speeds at the end, the way gone and the motors' lines make of it.
 */
const g = 9.80665;

const laid = (elements: readonly PlanElement[], points: readonly GradePoint[]): Track =>
  makeTrack({ start: { x: 0, y: 0, heading: 0.2 }, elements, profile: { points } });

const wagons = (count: number, c = {}) => Array.from({ length: count }, (_, i) => wagon(0.05 + 0.02 * (i % 3), c));
const up = (length: number, grade: number) => level(length, grade);

/** Level, 3 % up over a vertical curve, level again. */
const overCurves = laid(
  [straight(12)],
  [
    { chainage: 0, height: 0 },
    { chainage: 4, height: 0, curve: { length: 0.8 } },
    { chainage: 8, height: 0.12, curve: { length: 0.8 } },
    { chainage: 12, height: 0.12 },
  ],
);
/** An S of easements and arcs on the level. */
const throughEasements = laid(
  [
    straight(2.5),
    transition(0.4, 0, 1 / 0.6),
    arc(0.6, 1),
    transition(0.8, 1 / 0.6, -1 / 0.6),
    arc(0.6, -1),
    transition(0.4, -1 / 0.6, 0),
    straight(5),
  ],
  [{ chainage: 0, height: 0 }],
);
const onHelix = (grade: number) => {
  const climb = 0.3 + 3 * 2 * Math.PI * 0.6;
  return laid(
    [straight(2.6), transition(0.3, 0, 1 / 0.6), helix(0.6, 3), transition(0.3, 1 / 0.6, 0), straight(2)],
    [
      { chainage: 0, height: 0 },
      { chainage: 2.4, height: 0, curve: { length: 0.3 } },
      { chainage: 2.4 + climb, height: grade * climb, curve: { length: 0.3 } },
      { chainage: 4.9 + climb, height: grade * climb },
    ],
  );
};
const bar = {
  kind: 'rigid-bar',
  draftStiffness: Number.POSITIVE_INFINITY,
  buffStiffness: Number.POSITIVE_INFINITY,
} as const;
const stages = { draftSecond: { from: 2e-5, stiffness: 40_000 }, buffSecond: { from: 2e-5, stiffness: 40_000 } };
const guided = { kind: 'close', guide: { lengthening: 0.003, fullSwing: 0.35 } } as const;
const held = (setting: number, hold: number): SpeedOrder => ({ when: { time: 0.1 }, setting, hold, ramp: 1 });

interface Case {
  readonly track: Track;
  readonly train: readonly Vehicle[];
  readonly orders: readonly SpeedOrder[];
  readonly more?: Parameters<typeof trial>[3];
  /** Terms of the account that this case is about: they must not be nothing. */
  readonly about?: readonly ('motor' | 'kinetic' | 'potential' | 'stored' | 'curve' | 'flange' | 'holding')[];
  /** The way it goes, where it goes one way all along. */
  readonly way?: 1 | -1;
}

const upAndAway = [at(0, 0.7, 1)];
const cases: Readonly<Record<string, Case>> = {
  'a plain grade': { track: up(10, 0.02), train: [engine(0.4), ...wagons(6)], orders: upAndAway, about: ['potential'] },
  'a helix, with flange friction that compounds': {
    track: onHelix(0.02),
    train: [engine(0.4), ...wagons(8)],
    orders: upAndAway,
    about: ['potential', 'curve', 'flange'],
  },
  'a helix at the high edge of curve drag': {
    track: onHelix(0.02),
    train: [engine(0.4), ...wagons(5)],
    orders: upAndAway,
    more: { forces: { curveDrag: 'high' } },
    about: ['curve', 'flange'],
  },
  'vertical curves': { track: overCurves, train: [engine(0.4), ...wagons(6)], orders: upAndAway, about: ['potential'] },
  'easements and reverse curves': {
    track: throughEasements,
    train: [engine(0.4), ...wagons(6)],
    orders: upAndAway,
    about: ['curve', 'flange'],
  },
  'a speed held over vertical curves': {
    track: overCurves,
    train: [engine(0.4), ...wagons(6)],
    orders: [held(1, 0.25)],
    more: { script: { timeLimit: 30 } },
  },
  'rigid bars round a helix': {
    track: onHelix(0.02),
    train: [engine(0.4, {}, bar), ...wagons(5, bar)],
    orders: [at(0, 0.7, 3)],
    about: ['curve', 'potential'],
  },
  'springs of two stages': {
    track: onHelix(0.02),
    train: [engine(0.4, {}, stages), ...wagons(5, stages)],
    orders: upAndAway,
    about: ['stored'],
  },
  'guided shanks that lengthen in curves': {
    track: throughEasements,
    train: [engine(0.4, {}, guided), ...wagons(6, guided)],
    orders: upAndAway,
  },
  'a banker behind': {
    track: onHelix(0.025),
    train: [engine(0.4), ...wagons(9), engine(0.4, { stallForce: 0.9 })],
    orders: upAndAway,
  },
  'two engines that share': {
    track: up(10, 0.025),
    train: [engine(0.4), engine(0.35, { stallForce: 0.9, freeSpeed: 0.7 }), ...wagons(8)],
    orders: upAndAway,
  },
  'two engines that fight, the slower one braking by its worm': {
    track: level(12),
    train: [engine(0.4), engine(0.4, { freeSpeed: 0.3 }), ...wagons(2)],
    orders: upAndAway,
    about: ['holding'],
  },
  'a heavy flywheel that runs up and runs down': {
    track: level(12),
    train: [engine(0.4, { rotatingMass: 4, worm: false }), ...wagons(4)],
    orders: [at(0, 0.6, 1), at(6, 0, 0.5)],
    more: { script: { timeLimit: 10 } },
    about: ['kinetic'],
  },
  'a descent held by the worm': {
    track: onHelix(-0.03),
    train: [engine(0.4), ...wagons(6)],
    orders: [at(0, 0.5, 1)],
    about: ['holding', 'potential'],
  },
  'a descent on a motor without a worm': {
    track: up(10, -0.03),
    train: [engine(0.4, { worm: false }), ...wagons(6)],
    orders: [at(0, 0.3, 1)],
    about: ['potential'],
  },
  'axles that lose their load over vertical curves': {
    track: overCurves,
    train: [
      engine(0.45, {
        drivenMass: 0.3,
        adhesion: 0.6,
        axles: [0.03, 0, -0.03].map((ahead, i) => ({ ahead, driven: i > 0, share: 1 / 3, stiffness: 1e6 })),
      }),
      ...wagons(3),
    ],
    orders: upAndAway,
  },
  'a runaway round a helix, nothing driving': {
    track: onHelix(0.05),
    // Of unlike drag, or no coupling would carry anything.
    train: wagons(8).map((one, i) => ({ ...one, rolling: { ...one.rolling, coulomb: i % 2 ? 0.01 : 0.03 } })),
    orders: [],
    more: { script: { start: 12, timeLimit: 5 } },
    about: ['kinetic', 'potential', 'curve', 'flange'],
    way: -1,
  },
  'a start backwards': {
    track: up(10, 0.02),
    train: [engine(0.4), ...wagons(4)],
    orders: [at(0, -0.6, 1)],
    more: { script: { start: 8, timeLimit: 6 } },
    about: ['potential'],
    way: -1,
  },
};

describe('the energy account of a smooth run', () => {
  it.each(Object.keys(cases))('closes to 1e-6 of the work: %s', (name) => {
    const { track, train, orders, more, about = [], way = 1 } = cases[name]!;
    const input: RunInput = trial(track, train, orders, { ...more, script: { timeLimit: 25, ...more?.script } });
    const result = run(input);
    const { energy } = result;
    const work = Math.max(energy.motor, -energy.potential, energy.kinetic);
    expect(work).toBeGreaterThan(0.1);
    expect(Math.abs(energy.residual)).toBeLessThan(1e-6 * work);
    for (const term of about) expect(Math.abs(energy[term])).toBeGreaterThan(2e-6 * work);
    // No friction gives, and nothing slipped.
    for (const loss of ['rolling', 'curve', 'flange', 'coupler'] as const)
      expect(energy[loss]).toBeGreaterThanOrEqual(-1e-12);
    expect(Math.abs(energy.slip)).toBeLessThan(1e-12 * work);

    const n = result.vehicles;
    const last = (result.frames - 1) * n;
    let height = 0;
    let motion = 0;
    let rolled = 0;
    train.forEach((vehicle, i) => {
      const z = (row: number) => placeVehicle(track, vehicle, result.chainage[row + i]!).origin[2];
      height += vehicle.mass * g * (z(last) - z(0));
      motion += 0.5 * vehicle.mass * result.speed[last + i]! ** 2;
      // Normal force is weight by cosine and the way along the rail plan way by it: the cosine falls out.
      rolled += vehicle.mass * g * vehicle.rolling.coulomb * way * (result.chainage[last + i]! - result.chainage[i]!);
    });
    const k = result.locomotives.length;
    let driven = 0;
    result.locomotives.forEach((i, e) => {
      const { rotatingMass, stallForce, freeSpeed } = train[i]!.drive!;
      const rim = (f: number) => result.rimSpeed[f * k + e]!;
      const power = (f: number) => stallForce * (result.setting[f * k + e]! - rim(f) / freeSpeed) * rim(f);
      motion += 0.5 * rotatingMass * rim(result.frames - 1) ** 2;
      for (let f = 1; f < result.frames; f++)
        driven += 0.5 * (power(f - 1) + power(f)) * (result.time[f]! - result.time[f - 1]!);
    });
    // Heights of bodies at nodes 2 mm apart, linear between: a few hundredths of a millimetre in metres.
    expect(Math.abs(energy.potential - height)).toBeLessThan(1e-5 * work);
    expect(Math.abs(energy.kinetic - motion)).toBeLessThan(1e-9 * work);
    expect(Math.abs(energy.rolling / rolled - 1)).toBeLessThan(1e-3);
    // The motor's line at frames 20 ms apart, between them by trapezia.
    expect(Math.abs(energy.motor - driven)).toBeLessThan(1e-3 * work);
  });
});
