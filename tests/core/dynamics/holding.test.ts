import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import type { SpeedOrder } from '../../../src/core/dynamics/types.ts';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

const g = 9.80665;
const free = { rolling: { coulomb: 0, perSpeed: 0, breakaway: 1 } };
const hold = (time: number, speed: number, setting = 1, ramp = 0): SpeedOrder => ({
  when: { time },
  setting,
  hold: speed,
  ramp,
});

/** 0.4 kg of engine and 0.4 kg of wagons, level for 4 m, then up a grade. */
const train = [engine(0.4), ...new Array(4).fill(wagon(0.1))];
const ramp = (grade: number) =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(15)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 4, height: 0, curve: { length: 0.4 } },
        { chainage: 15, height: 11 * grade },
      ],
    },
  });
/** What a grade asks of the train: gravity and rolling, N. */
const asked = (grade: number) => {
  const pitch = Math.atan(grade);
  return 0.8 * g * (Math.sin(pitch) + 0.015 * Math.cos(pitch));
};

describe('a speed that a controller holds', () => {
  it('stays the same on the level and on a grade, with the setting that the motor line asks', () => {
    const result = run(trial(ramp(0.03), train, [hold(0.2, 0.2, 1, 1)], { script: { timeLimit: 38 } }));
    const n = train.length;
    const frameAt = (place: number) => result.chainage.findIndex((s, k) => k % n === 0 && s > place) / n;
    for (const [place, grade] of [
      [3.7, 0],
      [8, 0.03],
    ] as const) {
      const f = frameAt(place);
      expect(result.speed[f * n]).toBeCloseTo(0.2, 4);
      // F_stall·(u - v/v_free) = what is asked.
      expect(result.setting[f]).toBeCloseTo(0.2 / 0.6 + asked(grade) / 1.2, 3);
    }
    expect(Math.max(...result.setting)).toBeLessThan(1);
    expect(Math.abs(result.energy.residual)).toBeLessThan(1e-6 * result.energy.motor);
  });

  it('falls to what the motor gives where the setting is at its most, and does not overshoot after', () => {
    // On 3 %: 1.2·(0.6 - v/0.6) = 0.353 N → v = 0.1836 m/s, below the 0.25 asked.
    const over = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(12)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 3, height: 0, curve: { length: 0.4 } },
          { chainage: 7, height: 0.12, curve: { length: 0.4 } },
          { chainage: 12, height: 0.12 },
        ],
      },
    });
    const result = run(trial(over, train, [hold(0.2, 0.25, 0.6, 1)], { script: { timeLimit: 50 } }));
    const n = train.length;
    const frameAt = (place: number) => result.chainage.findIndex((s, k) => k % n === 0 && s > place) / n;
    const onGrade = frameAt(6.5);
    expect(result.setting[onGrade]).toBe(0.6);
    expect(result.speed[onGrade * n]).toBeCloseTo(0.6 * (0.6 - asked(0.03) / 1.2), 4);
    // Over the top the speed comes back to 0.25 with the few per cent any such controller overshoots by; an integral wound
    // up for ten seconds against the limit, 2/s of a quarter of free speed, would run to the limit of 0.3 m/s and stay.
    const fastest = Math.max(...result.speed.filter((_, k) => k % n === 0 && k / n > onGrade));
    expect(fastest).toBeLessThan(1.05 * 0.25);
    expect(result.speed[frameAt(10.5) * n]).toBeCloseTo(0.25, 3);
  });

  it('is found by the differential equation of motor and controller', () => {
    // τ·e″ + (1 + p)·e′ + i·e = 0 with τ = M·v_free/F_stall, e(0) = v*, e′(0) = -(1 + p)·v*/τ; p = i = 2; no drag.
    const alone = engine(0.4, { rotatingMass: 0.4 }, {}, free);
    const result = run(
      trial(level(6), [alone], [hold(0, 0.1)], {
        script: { start: 0.5, timeLimit: 3 },
        forces: { curveFactor: 0 },
      }),
    );
    const tau = (0.8 * 0.6) / 1.2;
    const half = -3 / (2 * tau);
    const root = Math.sqrt(half * half - 2 / tau);
    const [r1, r2] = [half + root, half - root];
    const slope = (-3 * 0.1) / tau;
    const b = (slope - r1 * 0.1) / (r2 - r1);
    const lack = (t: number) => (0.1 - b) * Math.exp(r1 * t) + b * Math.exp(r2 * t);
    for (const time of [0.1, 0.3, 1, 2.5]) {
      const v = result.speed[Math.round(time / result.interval)]!;
      // The controller sees the speed of the step's start: it lags by a step, at most what the speed gains in one.
      expect(Math.abs(0.1 - v - lack(time))).toBeLessThan(0.001 * Math.abs(slope));
    }
  });

  it('does not hide a stall: the setting climbs to its most, then the train is lost', () => {
    const heavy = [engine(0.5, { stallForce: 0.4 }), ...Array.from({ length: 5 }, () => wagon(0.3))];
    const result = run(trial(level(10, 0.03), heavy, [hold(0.2, 0.1, 0.9)]));
    expect(result.outcome).toBe('stalled');
    expect(result.setting.at(-1)).toBe(0.9);
    expect(result.speed.at(-1)).toBe(0);
  });

  it('finds the stall of spinning wheels, whose speed looks like speed held', () => {
    const heavy = [engine(0.3, { stallForce: 3 }), ...Array.from({ length: 6 }, () => wagon(0.3))];
    const result = run(trial(level(12, 0.03), heavy, [hold(0.2, 0.2, 1, 0.5)]));
    expect(result.outcome).toBe('stalled');
    expect(result.rimSpeed.at(-1)!).toBeGreaterThan(0.15);
  });

  it('stops for good at a speed of nothing, on a grade, with the motor cut', () => {
    const orders = [hold(0.2, 0.2, 1, 0.5), hold(6, 0, 1, 1)];
    const result = run(trial(level(12, 0.02), train, orders, { script: { timeLimit: 14 } }));
    expect(result.outcome).toBe('time-limit');
    expect(result.setting.at(-1)).toBe(0);
    const last = (result.frames - 1) * train.length;
    for (let i = 0; i < train.length; i++) expect(result.speed[last + i]).toBe(0);
  });

  it('runs backwards as it runs forwards', () => {
    const speedAfter = (setting: number) => {
      const result = run(
        trial(level(12), train, [hold(0.1, 0.15, setting, 0.5)], { script: { start: 6, timeLimit: 6 } }),
      );
      return result.speed[(result.frames - 1) * train.length]!;
    };
    expect(speedAfter(-1)).toBeCloseTo(-speedAfter(1), 6);
    expect(speedAfter(1)).toBeCloseTo(0.15, 3);
  });

  it('takes over from an open setting without a jerk, and hands back', () => {
    const orders = [at(0, 0.5, 1), hold(5, 0.25, 1, 0), at(10, 0.3, 0)];
    const result = run(trial(level(12), train, orders, { script: { timeLimit: 14 } }));
    const settingAt = (time: number) => result.setting[Math.round(time / result.interval)]!;
    const speedAt = (time: number) => result.speed[Math.round(time / result.interval) * train.length]!;
    // From what the motor had to what it needs for 0.25 m/s, the proportional part at once: 2·(0.25 - v)/0.6.
    const jump = 0.25 / 0.6 - speedAt(4.9) / 0.6 + (2 * (0.25 - speedAt(4.9))) / 0.6;
    expect(settingAt(5.02) - settingAt(4.9)).toBeCloseTo(jump, 2);
    expect(speedAt(9.9)).toBeCloseTo(0.25, 3);
    expect(settingAt(10.1)).toBe(0.3);
  });
});
