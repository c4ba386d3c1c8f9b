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
  ])(
    'masses 1:1000, %s: every step settles, the account closes, and the pull is what hangs behind',
    (_name, masses) => {
      for (const slack of [0, 0.001]) {
        const vehicles = [engine(0.5, { stallForce: 6, adhesion: 2 }), ...masses.map((mass) => wagon(mass, { slack }))];
        const chain = chainOn(level(20), vehicles, 12, { forces: plain });
        chain.engines[0]!.setting = 0.6;
        chain.advance(6000);
        expect(chain.unsettled).toBe(0);
        const damped = [vehicles[0]!, ...masses.map((mass) => wagon(mass, { slack, damping: 20 }))];
        const result = sound(trial(level(20), damped, [at(0, 0.6, 0.5)], { script: { timeLimit: 12 } }));
        const last = result.frames - 1;
        const n = masses.length;
        const behind = masses.map((_, j) => masses.slice(j).reduce((sum, mass) => sum + mass, 0));
        const greatest = balance(behind[0]!, 0);
        behind.forEach((mass, j) => {
          expect(Math.abs(result.force[last * n + j]! - balance(mass, 0))).toBeLessThan(1e-3 * greatest);
        });
        const speed = 0.6 * (0.6 - balance(0.5 + behind[0]!, 0) / 6);
        for (let i = 0; i <= n; i++) expect(result.speed[last * (n + 1) + i]! / speed).toBeCloseTo(1, 3);
      }
    },
  );

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
    // What each joint pulls, on the mean over the ringing: the wagons behind it.
    for (let j = 0; j < 8; j++) {
      let sum = 0;
      for (let f = result.frames - 200; f < result.frames; f++) sum += result.force[f * 8 + j]!;
      expect(sum / 200 / balance(0.05 * (8 - j), 0)).toBeCloseTo(1, 1);
    }
  });

  it('slack longer than the vehicles, taken up wagon by wagon: none moves before its joint is stretched', () => {
    const loose = { slack: 0.15, damping: 4 };
    const vehicles = [engine(0.5, {}, loose), ...Array.from({ length: 5 }, () => wagon(0.08, loose))];
    const chain = chainOn(level(40), vehicles, 20);
    chain.engines[0]!.setting = 0.4;
    const gap = (j: number) => chain.sigma(j) - chain.sigma(j + 1) - chain.tables.spacing[j]!;
    const started = new Array<number>(5).fill(0);
    for (let step = 1; step <= 12_000; step++) {
      chain.advance(1);
      for (let j = 0; j < 5; j++) {
        if (started[j] !== 0 || chain.speed(j + 1) === 0) continue;
        started[j] = step;
        expect(gap(j)).toBeGreaterThanOrEqual(0.15 - 1e-12);
      }
    }
    expect(chain.unsettled).toBe(0);
    // One after the other, and not in one blow: each has 0.15 m to wait for, at no more than twice the engine's 0.24 m/s at which a blow can throw it.
    for (let j = 1; j < 5; j++) expect(started[j]! - started[j - 1]!).toBeGreaterThan(0.15 / 0.48 / 0.001);
    // Each joint has its slack in draft: 0.15 m either side of the free length, and what its spring of 2000 N/m gives under what hangs behind.
    for (let j = 0; j < 5; j++) expect(gap(j)).toBeCloseTo(0.15 + balance(0.08 * (5 - j), 0) / 2000, 5);
    sound(trial(level(40), vehicles, [at(0, 0.4, 1)], { script: { start: 12, timeLimit: 12 } }));
  });

  it('the same train pushed together: slack closed one after the other, every joint in buff in the end', () => {
    const loose = { slack: 0.15, damping: 4 };
    const vehicles = [engine(0.5, {}, loose), ...Array.from({ length: 5 }, () => wagon(0.08, loose))];
    const result = sound(trial(level(40), vehicles, [at(0, -0.4, 1)], { script: { start: 36, timeLimit: 14 } }));
    const last = result.frames - 1;
    for (let j = 0; j < 5; j++) {
      const push = -balance(0.08 * (5 - j), 0);
      expect(result.force[last * 5 + j]! / push).toBeCloseTo(1, 3);
      expect(result.extension[last * 5 + j]).toBeCloseTo(-0.15 + push / 2000, 5);
    }
    expect(result.speed[last * 6]).toBeCloseTo(-0.6 * (0.4 - balance(0.9, 0) / 1.2), 4);
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

  it('45 % down behind a worm: it runs at its setting, holds all that falls, and takes the work of it', () => {
    const calm = { damping: 20 };
    const vehicles = [engine(0.5, { stallForce: 6, adhesion: 2 }, calm), wagon(0.1, calm), wagon(0.1, calm)];
    const result = sound(
      trial(level(12, 0.45), vehicles, [at(0, -0.5, 0.5)], { script: { start: 11.5, timeLimit: 6 } }),
    );
    const last = result.frames - 1;
    const pitch = Math.atan(0.45);
    const falling = (mass: number) => mass * g * (Math.sin(pitch) - 0.015 * Math.cos(pitch));
    expect(result.speed[3 * last]).toBeCloseTo(-0.3, 9);
    // The engine is above: it holds the wagons back in draft, and the rail holds it back uphill.
    expect(result.force[2 * last]).toBeCloseTo(falling(0.2), 4);
    expect(result.railForce[last]).toBeCloseTo(falling(0.7), 3);
    const { potential, rolling, motor, holding, kinetic, stored, coupler } = result.energy;
    const way = -(result.chainage[3 * last]! - result.chainage[0]!) / Math.cos(pitch);
    expect(-potential / (0.7 * g * Math.sin(pitch) * way)).toBeCloseTo(1, 3);
    expect(rolling / (0.7 * g * 0.015 * Math.cos(pitch) * way)).toBeCloseTo(1, 3);
    expect((motor - potential - rolling - kinetic - stored - coupler) / holding).toBeCloseTo(1, 6);
  });

  it('slides down 45 % with its wheels locked where they cannot hold: a body on a slope with sliding friction', () => {
    // 0.22 does not hold 0.45; wheels that stand slide at 0.16 once they slide at all, and roll no more easily for it.
    const locked = engine(0.5, { slipScale: 1e-4 });
    const result = sound(trial(level(12, 0.45), [locked], [], { script: { start: 11.5, timeLimit: 1.2 } }));
    const pitch = Math.atan(0.45);
    const a = g * (Math.sin(pitch) - (0.16 + 0.015) * Math.cos(pitch));
    const last = result.frames - 1;
    // The first step is held back at 0.22.
    expect(result.speed[last]! / (-a * result.time[last]!)).toBeCloseTo(1, 3);
    expect(result.rimSpeed[last]).toBe(0);
    expect(result.railForce[last]! / (0.16 * 0.5 * g * Math.cos(pitch))).toBeCloseTo(1, 6);
    const way = (0.5 * result.speed[last]! ** 2) / a;
    expect(result.energy.slip / (0.16 * 0.5 * g * Math.cos(pitch) * way)).toBeCloseTo(1, 3);
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
    // The whole train is on the arc, the first metre and a bit being the straight and its easement.
    expect(result.chainage[3 * last + 2]!).toBeGreaterThan(1.4);
    // Bodies are chords of the circle, their pins 40 mm behind and before the middle: those lie on a circle of their own, and the joint is a chord of it.
    const [radius, half, pin] = [0.045, 0.03, 0.04];
    const middle = Math.sqrt(radius * radius - half * half);
    const pins = Math.hypot(middle, pin);
    const joint = 0.04 + result.extension[2 * last + 1]!;
    const apart = radius * 2 * (Math.atan(pin / middle) + Math.asin(joint / 2 / pins));
    // On the straight it is 120 mm. The run takes the change of length at straight spacing, exact to first order: in this curve within 6 % of it.
    const shorter = 0.12 - (result.chainage[3 * last + 1]! - result.chainage[3 * last + 2]!);
    expect(0.12 - apart).toBeGreaterThan(0.005);
    expect(Math.abs(shorter / (0.12 - apart) - 1)).toBeLessThan(0.06);
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
    const speed = -0.6 * (0.9 - balance(0.5 + 0.48, 0) / 1.2);
    for (let i = 0; i < 7; i++) expect(result.speed[last + i]! / speed).toBeCloseTo(1, 2);
    // It pulled ahead and now pushes back, as much at every joint: on the mean over a second, as they still ring.
    const mean = (from: number, j: number) => {
      const first = Math.round(from / result.interval);
      return Array.from({ length: 48 }, (_, f) => result.force[(first + f) * 6 + j]!).reduce((a, b) => a + b) / 48;
    };
    for (let j = 0; j < 6; j++) {
      const drag = balance(0.08 * (6 - j), 0);
      expect(Math.abs(mean(4, j) / drag - 1)).toBeLessThan(0.03);
      expect(Math.abs(mean(10, j) / -drag - 1)).toBeLessThan(0.03);
    }
    // The engine turns once, and is never thrown faster than its motor line goes.
    const way = Array.from({ length: result.frames }, (_, f) => Math.sign(result.speed[7 * f]!)).filter((w) => w !== 0);
    expect(way.filter((w, f) => f > 0 && w !== way[f - 1])).toEqual([-1]);
    expect(Math.min(...result.speed)).toBeGreaterThan(-0.6 * 0.9);
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
