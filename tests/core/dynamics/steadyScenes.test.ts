import { describe, expect, it } from 'vitest';
import { run, steadyRun } from '../../../src/core/dynamics/index.ts';
import type { RunInput, SpeedOrder } from '../../../src/core/dynamics/types.ts';
import { helix, makeTrack, straight, type Track, transition } from '../../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

const rolling = { rolling: { coulomb: 0.015, perSpeed: 0.01, breakaway: 1 } };
const wagons = (count: number, c = {}) =>
  Array.from({ length: count }, (_, i) => wagon(0.06 + 0.01 * (i % 4), c, rolling));

/** A climb through a helix of two turns and back down to level, 17 m. */
const overTheHill: Track = makeTrack({
  start: { x: 0, y: 0, heading: 0 },
  elements: [straight(3), transition(0.4, 0, 1 / 0.7), helix(0.7, 1.2), transition(0.4, 1 / 0.7, 0), straight(7.5)],
  profile: {
    points: [
      { chainage: 0, height: 0 },
      { chainage: 3, height: 0, curve: { length: 0.5 } },
      { chainage: 9, height: 0.15, curve: { length: 0.8 } },
      { chainage: 13, height: 0.05, curve: { length: 0.6 } },
      { chainage: 17, height: 0.05 },
    ],
  },
});

/** Where both passes are steady over their last half metre they must agree: speed, every coupling, every engine's pull. */
function compare(input: RunInput, setting: number | readonly number[], places: readonly number[], hold?: number) {
  const full = run(input);
  const steady = steadyRun(input, { every: 0.02, setting, ...(hold === undefined ? {} : { hold }) });
  const n = input.train.vehicles.length;
  const k = full.locomotives.length;
  const frameAt = ({ chainage, frames }: typeof full, place: number) => {
    for (let f = 0; f < frames; f++) if (chainage[f * n]! >= place) return f;
    throw new Error(`never gets to ${place} m`);
  };
  for (const place of places) {
    const [a, b] = [frameAt(full, place), frameAt(steady, place)];
    expect(Math.abs(steady.speed[b * n]! / full.speed[a * n]! - 1)).toBeLessThan(0.01);
    const forces = Array.from({ length: n - 1 }, (_, j) => full.force[a * (n - 1) + j]!);
    const scale = Math.max(...forces.map(Math.abs), ...Array.from({ length: k }, (_, e) => full.railForce[a * k + e]!));
    forces.forEach((force, j) => {
      expect(Math.abs(steady.force[b * (n - 1) + j]! - force)).toBeLessThan(0.01 * scale);
    });
    for (let e = 0; e < k; e++) {
      expect(Math.abs(steady.railForce[b * k + e]! - full.railForce[a * k + e]!)).toBeLessThan(0.01 * scale);
      expect(steady.gripLimit[b * k + e]! / full.gripLimit[a * k + e]!).toBeCloseTo(1, 2);
      expect(steady.motorLimit[b * k + e]! / full.motorLimit[a * k + e]!).toBeCloseTo(1, 2);
    }
    expect(steady.setting[b * k]).toBeCloseTo(full.setting[a * k]!, 2);
  }
}

describe('the quasi-static pass against the full run', () => {
  it('over a hill with two unequal engines in front', () => {
    const train = [engine(0.4), engine(0.35, { stallForce: 0.9, freeSpeed: 0.55 }), ...wagons(8)];
    compare(trial(overTheHill, train, [at(0, 0.6, 1)], { script: { timeLimit: 100 } }), 0.6, [7, 8.2, 12.2, 15]);
  });

  it('over a hill with a banker turned to a setting of its own and two-stage couplings', () => {
    const stage = { draftSecond: { from: 2e-5, stiffness: 20_000 }, buffSecond: { from: 2e-5, stiffness: 20_000 } };
    const train = [engine(0.4, {}, stage), ...wagons(8, stage), engine(0.35, { stallForce: 0.8 }, stage)];
    const orders: SpeedOrder[] = [at(0, 0.6, 1), { when: { time: 0 }, setting: 0.45, ramp: 1, vehicle: 9 }];
    compare(trial(overTheHill, train, orders), [0.6, 0.45], [7, 8.2]);
  });

  it('up a plain grade at a speed held, setting and all', () => {
    const train = [engine(0.5), ...wagons(6)];
    const order = { when: { time: 0 }, setting: 1, hold: 0.2, ramp: 2 };
    compare(trial(level(9, 0.025), train, [order]), 1, [4, 6, 8], 0.2);
  });

  it('takes the weight off driven axles where the profile does', () => {
    const axles = [0.03, 0, -0.03].map((ahead, i) => ({ ahead, driven: i > 0, share: 1 / 3, stiffness: 1e6 }));
    const front = engine(0.45, { drivenMass: 0.3, adhesion: 0.6, axles });
    const input = trial(overTheHill, [front, ...wagons(3)], [at(0, 0.6, 1)]);
    const steady = steadyRun(input, { every: 0.02, setting: 0.6 });
    const full = run(input);
    const least = (column: Float64Array) => Math.min(...column.slice(1));
    // The vertical curve at the foot hangs the middle axle: half the weight is on the one driven end, 0.225 kg instead of 0.3.
    expect(least(steady.gripLimit) / (0.6 * 0.225 * 9.80665)).toBeCloseTo(1, 2);
    expect(least(steady.gripLimit) / least(full.gripLimit)).toBeCloseTo(1, 2);
  });

  it('shares the demand out by driven mass, as the run does, and books no energy', () => {
    const train = [engine(0.4), engine(0.3, { drivenMass: 0.2 }), ...wagons(5)];
    const input = trial(level(9, 0.02), train, [at(0, 0.6, 1)], { script: { timeLimit: 30 } });
    const steady = steadyRun(input, { every: 0.05, setting: 0.6 });
    const full = run(input);
    for (const { demand } of [steady, full]) {
      // 0.4 kg and 0.2 kg on driven wheels.
      const [first, second] = demand.slice(-2);
      expect(first! / second!).toBeCloseTo(2, 9);
    }
    const sum = (column: Float64Array) => column.slice(-2).reduce((a, b) => a + b);
    // In all it is what the engines give where the speed is in balance.
    expect(sum(steady.demand)).toBeCloseTo(sum(steady.railForce), 9);
    expect(sum(steady.demand) / sum(full.demand)).toBeCloseTo(1, 3);
    expect(Object.values(steady.energy).every((joules) => joules === 0)).toBe(true);
    expect(steady.events).toEqual([]);
  });

  it('says that it stalls where no setting up to the most holds the speed at all', () => {
    const heavy = [engine(0.5, { stallForce: 0.4 }), ...wagons(10)];
    const input = trial(level(9, 0.03), heavy, [at(0, 1)]);
    expect(steadyRun(input, { every: 0.05, setting: 0.9, hold: 0.1 }).outcome).toBe('stalled');
  });
});
