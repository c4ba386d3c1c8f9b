import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import { arc, makeTrack, straight, trackPoint, transition } from '../../../src/core/track/index.ts';
import { cannon, odex } from '../../bench/rivals.ts';
import { bench, plainGrade } from '../../bench/train.ts';
import { at, engine, trial, wagon } from '../../core/dynamics/trains.ts';
import { odexSolver } from '../../odexSolver.ts';

describe('the same train on general engines', () => {
  // cannon-es 0.20 (rigid bodies) and odex 2 (Gragg-Bulirsch-Stoer extrapolation), forces written in tests/bench/rivals.ts.
  const seconds = 6;
  const n = bench.vehicles;
  const speedsAt = (step: number) => {
    const input = plainGrade();
    const result = run({
      ...input,
      script: { ...input.script, timeLimit: seconds },
      options: { ...input.options, step },
    });
    return result.speed.slice((result.frames - 1) * n);
  };

  it('ends at the speeds odex finds, couplings still ringing', () => {
    // What is left is odex's friction, smoothed over 1 mm/s: halving the solver's step does not change it.
    const exact = odex.run(seconds).speeds;
    speedsAt(0.001).forEach((v, i) => {
      expect(Math.abs(v - exact[i]!)).toBeLessThan(1e-4 * bench.freeSpeed);
    });
  });

  it('ends at the speeds cannon-es finds', () => {
    const { speeds } = cannon.run(seconds);
    // A first-order engine at 1 ms: agreement to a thousandth is what its order allows.
    speedsAt(0.001).forEach((v, i) => {
      expect(v / speeds[i]!).toBeCloseTo(1, 3);
    });
  });
});

describe('a short train over a vertical curve into a bend, integrated by odex from the track itself', () => {
  it('goes where odex says, grade, curve drag and slack included', () => {
    const radius = 0.6;
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(2.5), transition(0.4, 0, 1 / radius), arc(radius, 3)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 2, height: 0, curve: { length: 0.6 } },
          { chainage: 4.7, height: 0.054 },
        ],
      },
    });
    const k = 400;
    const slack = 0.001;
    const half = { draftStiffness: 2 * k, buffStiffness: 2 * k, damping: 2, slack: slack / 2 };
    const small = {
      bodyLength: 0.05,
      pivotSpacing: 0.03,
      frontOverhang: 0.01,
      rearOverhang: 0.01,
      rigidWheelbase: 0.03,
    };
    const vehicles = [
      engine(0.4, { rotatingMass: 0.2 }, half, small),
      wagon(0.08, half, small),
      wagon(0.12, half, small),
    ];
    const result = run(
      trial(track, vehicles, [at(0, 0.6, 1)], {
        script: { start: 1.2, timeLimit: 6 },
        forces: { flangeFriction: 0 },
      }),
    );

    const m = [0.4, 0.08, 0.12];
    const inertia = [0.6, 0.08, 0.12];
    const solver = odexSolver(6, 1e-9);
    const start = [0, 1, 2].map((i) => result.chainage[i]!);
    const gaps = [start[0]! - start[1]!, start[1]! - start[2]!];
    const onset = (x: number) => Math.tanh(x / 1e-4);
    const slope = (t: number, y: number[]) => {
      const f = m.map((mass, i) => {
        const at = (offset: number) => trackPoint(track, y[i]! + offset);
        const [a, b] = [at(0.015), at(-0.015)];
        const sine = 0.5 * (a.grade / Math.hypot(1, a.grade) + b.grade / Math.hypot(1, b.grade));
        const bend = 0.5 * (Math.abs(a.curvature) + Math.abs(b.curvature));
        const drag = 0.015 + 0.2 * (0.72 * 0.0165 + 0.47 * 0.03) * bend;
        return -mass * 9.80665 * (sine + drag * onset(y[3 + i]!));
      });
      for (let j = 0; j < 2; j++) {
        const e = y[j]! - y[j + 1]! - gaps[j]!;
        const rate = y[3 + j]! - y[4 + j]!;
        const c = 1;
        const force =
          e > slack / 2
            ? Math.max(0, k * (e - slack / 2) + c * rate)
            : e < -slack / 2
              ? Math.min(0, k * (e + slack / 2) + c * rate)
              : 0;
        f[j]! -= force;
        f[j + 1]! += force;
      }
      f[0]! += 1.2 * 0.6 * Math.min(t, 1) - (1.2 / 0.6) * y[3]!;
      return [y[3]!, y[4]!, y[5]!, ...f.map((force, i) => force / inertia[i]!)];
    };
    // Rail distance and chainage differ by half of 2 %², 2e-4 of the way on the grade: below what is compared.
    let y = [...start, 0, 0, 0];
    for (let leg = 0; leg < 60; leg++) y = solver.solve(slope, 0.1 * leg, y, 0.1 * (leg + 1)).y;
    const last = (result.frames - 1) * 3;
    for (let i = 0; i < 3; i++) {
      expect(result.chainage[last + i]!).toBeGreaterThan(2.4);
      expect((result.chainage[last + i]! - start[i]!) / (y[i]! - start[i]!)).toBeCloseTo(1, 3);
      expect(result.speed[last + i]! / y[3 + i]!).toBeCloseTo(1, 2);
    }
  });
});
