import { describe, expect, it } from 'vitest';
import { run, steadyRun } from '../../../src/core/dynamics/index.ts';
import { helix, makeTrack, straight, transition } from '../../../src/core/track/index.ts';
import { at, engine, trial, wagon } from './trains.ts';

const radius = 0.6;
const spiral = (grade: number) => {
  const climb = 0.6 + 3 * 2 * Math.PI * radius;
  return makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [
      straight(2),
      transition(0.3, 0, 1 / radius),
      helix(radius, 3),
      transition(0.3, 1 / radius, 0),
      straight(1),
    ],
    profile: {
      points: [
        { chainage: 0, height: 0.4 },
        { chainage: 2, height: 0.4, curve: { length: 0.3 } },
        { chainage: 2 + climb, height: 0.4 + grade * climb, curve: { length: 0.3 } },
        { chainage: 3 + climb, height: 0.4 + grade * climb },
      ],
    },
  });
};
const wagons = [0.05, 0.09, 0.06, 0.12, 0.05].map((mass) =>
  wagon(mass, {}, { rolling: { coulomb: 0.015, perSpeed: 0.01, breakaway: 1 } }),
);

describe('the quasi-static pass', () => {
  it.each([
    ['pulled up', 0.02, [engine(0.4), ...wagons]],
    ['pushed up', 0.02, [...wagons, engine(0.4)]],
    ['pulled down, held by the worm', -0.04, [engine(0.4), ...wagons]],
    ['pulled up by two, one in front and one behind', 0.02, [engine(0.4), ...wagons, engine(0.35)]],
  ])('agrees with the full run within 1 %% in the steady part of a spiral: %s', (_name, grade, vehicles) => {
    const input = trial(spiral(grade), vehicles, [at(0, 0.6, 1)], { script: { timeLimit: 60 } });
    const full = run(input);
    const steady = steadyRun(input, { every: 0.02, setting: 0.6 });
    const n = vehicles.length;
    // Wholly in the spiral, well past the foot.
    const place = 8;
    const frameAt = (result: typeof full) => {
      for (let f = 0; f < result.frames; f++) if (result.chainage[f * n]! >= place) return f;
      throw new Error('never gets there');
    };
    const a = frameAt(full);
    const b = frameAt(steady);
    expect(steady.speed[b * n]! / full.speed[a * n]!).toBeCloseTo(1, 2);
    const greatest = Math.max(...Array.from({ length: n - 1 }, (_, j) => Math.abs(full.force[a * (n - 1) + j]!)));
    for (let j = 0; j + 1 < n; j++) {
      expect(Math.abs(steady.force[b * (n - 1) + j]! - full.force[a * (n - 1) + j]!)).toBeLessThan(0.01 * greatest);
    }
    expect(steady.outcome).toBe('arrived');
  });

  it('says so when there is no speed at which the train keeps moving', () => {
    const heavy = [engine(0.4, { stallForce: 0.3 }), ...wagons, ...wagons];
    const input = trial(spiral(0.03), heavy, [at(0, 0.6, 1)]);
    const steady = steadyRun(input, { every: 0.02, setting: 0.6 });
    expect(steady.outcome).toBe('stalled');
    expect(run(input).outcome).toBe('stalled');
  });
});
