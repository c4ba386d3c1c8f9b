import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import type { RunInput } from '../../../src/core/dynamics/types.ts';
import { arc, makeTrack, straight, transition } from '../../../src/core/track/index.ts';
import { chainOn } from './chains.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

const g = 9.80665;
const plain = { curveFactor: 0, flangeFriction: 0 };

/** Runs a trial and asks what every smooth one must keep: energy to 1e-6 of what was put in or fell, finite numbers throughout. */
function sound(input: RunInput) {
  const result = run(input);
  const { motor, potential, kinetic, residual } = result.energy;
  const work = Math.max(motor, Math.abs(potential), kinetic);
  expect(Math.abs(residual)).toBeLessThanOrEqual(1e-6 * work);
  for (const column of [result.speed, result.chainage, result.force, result.extension]) {
    expect(column.every(Number.isFinite)).toBe(true);
  }
  return result;
}

/** The least force at which a train of this mass on this grade starts, N. */
const balance = (mass: number, grade: number, coulomb = 0.015) => {
  const pitch = Math.atan(grade);
  return mass * g * (Math.sin(pitch) + coulomb * Math.cos(pitch));
};

describe('trains made to trip the solver', () => {
  it.each([
    ['light among heavy', [2, 0.002, 2, 0.002, 2]],
    ['heavy behind light', [0.002, 0.002, 0.002, 2, 2]],
    ['light behind heavy', [2, 2, 0.002, 0.002, 0.002]],
  ])('masses 1:1000, %s: every step settles and the account closes', (_name, masses) => {
    for (const slack of [0, 0.001]) {
      const vehicles = [engine(0.5, { stallForce: 6, adhesion: 2 }), ...masses.map((mass) => wagon(mass, { slack }))];
      const chain = chainOn(level(20), vehicles, 12, { forces: plain });
      chain.engines[0]!.setting = 0.6;
      chain.advance(6000);
      expect(chain.unsettled).toBe(0);
      sound(trial(level(20), vehicles, [at(0, 0.6, 0.5)], { script: { timeLimit: 6 } }));
    }
  });

  it('no slack at all, and joints as stiff as they come, started at a blow', () => {
    const rigid = {
      slack: 0,
      damping: 0,
      draftStiffness: Number.POSITIVE_INFINITY,
      buffStiffness: Number.POSITIVE_INFINITY,
    };
    const vehicles = [engine(0.4, {}, rigid), ...Array.from({ length: 8 }, () => wagon(0.05, rigid))];
    const result = sound(trial(level(12), vehicles, [at(0, 0.8, 0)], { script: { timeLimit: 8 } }));
    // Nothing stretches: all go at the motor line's speed, v = 0.6·(0.8 - D/1.2), but for joints that ring undamped about it.
    const lately = result.speed.slice(-100 * 9);
    const mean = lately.reduce((sum, v) => sum + v, 0) / lately.length;
    expect(mean).toBeCloseTo(0.6 * (0.8 - balance(0.8, 0) / 1.2), 4);
    expect(Math.max(...lately) - Math.min(...lately)).toBeLessThan(0.001);
    for (let j = 0; j < 8; j++) expect(Math.abs(result.extension[(result.frames - 1) * 8 + j]!)).toBeLessThan(1e-6);
  });

  it('slack longer than the vehicles, taken up wagon by wagon', () => {
    const loose = { slack: 0.15, damping: 4 };
    const vehicles = [engine(0.5, {}, loose), ...Array.from({ length: 5 }, () => wagon(0.08, loose))];
    const chain = chainOn(level(40), vehicles, 20);
    chain.engines[0]!.setting = 0.4;
    chain.advance(12_000);
    expect(chain.unsettled).toBe(0);
    // Each joint has its slack in draft: 0.15 m either side of the free length, and a little spring.
    for (let j = 0; j < 5; j++) {
      const gap = chain.sigma(j) - chain.sigma(j + 1) - chain.tables.spacing[j]!;
      expect(gap).toBeGreaterThan(0.15);
      expect(gap).toBeLessThan(0.151);
    }
    sound(trial(level(40), vehicles, [at(0, 0.4, 1)], { script: { start: 12, timeLimit: 12 } }));
  });

  it('45 % up: pulls as statics of a slope have it', () => {
    const vehicles = [engine(0.5, { stallForce: 6, adhesion: 2 }), wagon(0.1), wagon(0.1)];
    const result = sound(trial(level(8, 0.45), vehicles, [at(0.1, 0.9, 0.5)], { script: { timeLimit: 5 } }));
    const last = (result.frames - 1) * 3;
    expect(result.force[(result.frames - 1) * 2]).toBeCloseTo(balance(0.2, 0.45), 4);
    expect(result.speed[last]).toBeCloseTo(0.6 * (0.9 - balance(0.7, 0.45) / 6), 4);
  });

  it('45 % down with nothing to hold it: falls as a body on a slope', () => {
    const result = sound(
      trial(level(12, 0.45), [wagon(0.1), wagon(0.1)], [], { script: { start: 11.5, timeLimit: 1.5 } }),
    );
    const pitch = Math.atan(0.45);
    const a = g * (Math.sin(pitch) - 0.015 * Math.cos(pitch));
    const last = result.frames - 1;
    expect(result.speed[2 * last]! / (-a * result.time[last]!)).toBeCloseTo(1, 6);
  });

  it('stands at exactly nothing on 45 % when the worm and the wheels hold', () => {
    const vehicles = [engine(0.5, { stallForce: 6, adhesion: 2 }), wagon(0.1), wagon(0.1)];
    const result = sound(trial(level(8, 0.45), vehicles, [], { script: { timeLimit: 4 } }));
    for (let f = result.frames - 50; f < result.frames; f++) {
      for (let i = 0; i < 3; i++) expect(result.speed[f * 3 + i]).toBe(0);
    }
  });

  it('a curve tighter than twice the wheelbase: drag and length stay what geometry says', () => {
    // 60 mm between axles on 45 mm radius. Nominal drag: 0.2·(0.72·16.5 + 0.47·60)/45 = 17.8 % of weight.
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1.2), transition(0.1, 0, 1 / 0.045), arc(0.045, 40), straight(1)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const vehicles = [engine(0.5, { stallForce: 4, adhesion: 1 }), wagon(0.05), wagon(0.05)];
    const result = sound(
      trial(track, vehicles, [at(0.1, 0.4, 1)], {
        script: { start: 0.9, timeLimit: 10 },
        forces: { flangeFriction: 0 },
      }),
    );
    const last = result.frames - 1;
    const share = 0.015 + (0.2 * (0.72 * 0.0165 + 0.47 * 0.06)) / 0.045;
    expect(result.chainage[3 * last + 2]!).toBeGreaterThan(1.4);
    expect(result.force[2 * last]! / (0.1 * g * share)).toBeCloseTo(1, 3);
  });

  it('refuses a curve narrower than the wheelbase is long, naming the vehicle', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1.2), arc(0.02, 3), straight(1)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    expect(() => run(trial(track, [engine(0.4)], [at(0, 0.5)], { script: { start: 0.9 } }))).toThrow(/engine/);
  });

  it.each([true, false])('thrown into reverse at speed, worm %s: goes back, every step settled', (worm) => {
    const vehicles = [
      engine(0.5, { worm, adhesion: 0.5 }, { slack: 0.002 }),
      ...Array.from({ length: 6 }, () => wagon(0.08, { slack: 0.002 })),
    ];
    const result = sound(
      trial(level(14), vehicles, [at(0, 0.9, 0.5), at(5, -0.9, 0)], { script: { start: 3, timeLimit: 11 } }),
    );
    const last = (result.frames - 1) * 7;
    for (let i = 0; i < 7; i++) expect(result.speed[last + i]!).toBeLessThan(-0.4);
    const chain = chainOn(level(14), vehicles, 6);
    for (const setting of [0.9, -0.9, 0.9, -0.9]) {
      chain.engines[0]!.setting = setting;
      chain.advance(1500);
    }
    expect(chain.unsettled).toBe(0);
  });

  it('stalls a millionth below balance and starts a millionth above', () => {
    const wagons = [wagon(0.1), wagon(0.1)];
    const needed = balance(0.7, 0.02);
    const outcome = (share: number, stallPatience: number) =>
      sound(
        trial(level(8, 0.02), [engine(0.5, { stallForce: needed * share }), ...wagons], [at(0, 1, 0)], {
          script: { timeLimit: 60 },
          options: { stallPatience },
        }),
      );
    const below = outcome(1 - 1e-6, 30);
    expect(below.outcome).toBe('stalled');
    const last = (below.frames - 1) * 3;
    for (let i = 0; i < 3; i++) expect(below.speed[last + i]).toBe(0);
    const above = outcome(1 + 1e-6, 100);
    const end = (above.frames - 1) * 3;
    // A millionth of the force in hand: v_free·1e-6 once it has settled, forwards and not at rest.
    for (let i = 0; i < 3; i++) expect(above.speed[end + i]!).toBeGreaterThan(0);
    expect(above.speed[end]!).toBeLessThan(0.6e-6 * 1.001);
  });
});
