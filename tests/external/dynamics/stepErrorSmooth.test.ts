import { describe, expect, it } from 'vitest';
import { makeTrack, railAt, straight, type Track } from '../../../src/core/track/index.ts';
import { halvings, order, rolling, runFor, spring, trainsOn } from '../../core/dynamics/stepErrors.ts';
import { engine, level, wagon } from '../../core/dynamics/trains.ts';
import { odexSolver } from '../../odexSolver.ts';

/*
 * Error of the time step against exact smooth motion: closed forms of textbook mechanics (each stands beside its check), or a general
 * integrator where a form would fill a page. The method is the trapezoidal rule: second order where nothing sticks or touches.
 */
const g = 9.80665;

/** Every halving of four divides the error by four, to a tenth in the exponent. */
function expectSecondOrder(first: number, error: (step: number) => number): void {
  const errors = halvings(first, 4).map(error);
  for (let i = 0; i < 4; i++) expect(Math.abs(order(errors[i]!, errors[i + 1]!) - 2)).toBeLessThan(0.11);
}

describe('smooth motion: error against the exact solution falls with the square of the step', () => {
  it('of two vehicles on a linear spring: v = v₀·cos ωt, ω² = k/m*', () => {
    const [k, v, time] = [200, 0.3, 0.8];
    const on = trainsOn(
      level(3),
      [0.1, 0.25].map((mass) => wagon(mass, spring(k), rolling(0))),
    );
    const omega = Math.sqrt(k / ((0.1 * 0.25) / 0.35));
    expectSecondOrder(0.002, (step) =>
      on(step, { speeds: [v, 0] }, (chain) => {
        runFor(chain, step, time);
        return Math.abs(chain.speed(0) - chain.speed(1) - v * Math.cos(omega * time));
      }),
    );
  });

  it('of an engine on a constant grade with a linear motor: v = v∞·(1 - exp(-t/τ)), and its way', () => {
    const grade = 0.02;
    const pitch = Math.atan(grade);
    const pull = 0.9 * 1.2 - 0.4 * g * (Math.sin(pitch) + 0.015 * Math.cos(pitch));
    const most = pull / (1.2 / 0.6);
    const tau = 0.7 / (1.2 / 0.6);
    const time = 0.64;
    const on = trainsOn(level(3, grade), [engine(0.4, { rotatingMass: 0.3, adhesion: 0.9 })]);
    const errors = (step: number) =>
      on(step, {}, (chain) => {
        const start = chain.sigma(0);
        chain.engines[0]!.setting = 0.9;
        runFor(chain, step, time);
        return {
          speed: Math.abs(chain.speed(0) - most * (1 - Math.exp(-time / tau))),
          way: Math.abs(chain.sigma(0) - start - most * (time - tau * (1 - Math.exp(-time / tau)))),
        };
      });
    expectSecondOrder(0.064, (step) => errors(step).speed);
    expectSecondOrder(0.064, (step) => errors(step).way);
  });

  it('of an engine and three wagons that swing behind it up a grade, every one of them', () => {
    // All is linear: springs without slack, drag by speed, a motor's line. odex 2 at 1e-13 stands for the sum of eight exponentials.
    const [grade, k, time] = [0.02, 300, 0.64];
    const pitch = Math.atan(grade);
    const masses = [0.4, 0.1, 0.2, 0.15];
    const drag = [0.05, 0.04, 0.06, 0.02];
    const slope = (_t: number, y: number[]) => {
      const f = masses.map((m, i) => -m * g * (Math.sin(pitch) + drag[i]! * Math.cos(pitch) * y[4 + i]!));
      for (let j = 0; j < 3; j++) {
        const force = k * (y[j]! - y[j + 1]!);
        f[j]! -= force;
        f[j + 1]! += force;
      }
      f[0]! += 1.2 * 0.9 - (1.2 / 0.6) * y[4]!;
      return [...y.slice(4), ...f.map((force, i) => force / (masses[i]! + (i === 0 ? 0.3 : 0)))];
    };
    const exact = odexSolver(8, 1e-13).solve(slope, 0, new Array(8).fill(0), time).y.slice(4);
    const vehicles = masses.map((mass, i) =>
      i === 0
        ? engine(mass, { rotatingMass: 0.3, adhesion: 3, worm: false }, spring(k), rolling(0, drag[i]))
        : wagon(mass, spring(k), rolling(0, drag[i])),
    );
    const on = trainsOn(level(3, grade), vehicles);
    expectSecondOrder(0.004, (step) =>
      on(step, {}, (chain) => {
        chain.engines[0]!.setting = 0.9;
        runFor(chain, step, time);
        return Math.max(...exact.map((v, i) => Math.abs(chain.speed(i) - v)));
      }),
    );
  });

  it('of a wagon through a hollow whose grade is a line in the way, by quadrature of dt = ds/v', () => {
    // A parabola z = x²/2r and v² = v₀² + g·(x₀² - x²)/r. A wagon as short as a node of the route's tables is a bead.
    const track: Track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(6)],
      profile: {
        points: [
          { chainage: 0, height: 0.15 },
          { chainage: 3, height: 0, curve: { length: 5.9 } },
          { chainage: 6, height: 0.15 },
        ],
      },
    });
    const r = 5.9 / (2 * 0.05);
    const [x0, v0, time] = [-1.5, 0.3, 3.2];
    const speedAt = (x: number) => Math.sqrt(v0 * v0 + (g * (x0 * x0 - x * x)) / r);
    const onWay = (x: number) => Math.hypot(1, x / r) / speedAt(x);
    /** Simpson on 2000 strips: good to 1e-14 s. */
    const timeTo = (x1: number) => {
      const strip = (x1 - x0) / 2000;
      let sum = 0;
      for (let i = 0; i < 2000; i++) {
        const x = x0 + i * strip;
        sum += (strip / 6) * (onWay(x) + 4 * onWay(x + strip / 2) + onWay(x + strip));
      }
      return sum;
    };
    let [low, high] = [x0, 1.6];
    for (let i = 0; i < 60; i++) {
      const middle = 0.5 * (low + high);
      if (timeTo(middle) < time) low = middle;
      else high = middle;
    }
    const size = { pivotSpacing: 0.002, rigidWheelbase: 0.002, frontOverhang: 0.049, rearOverhang: 0.049 };
    const on = trainsOn(track, [wagon(0.1, {}, { ...rolling(0), ...size })], railAt(track, 3 + x0));
    expectSecondOrder(0.128, (step) =>
      on(step, { speeds: [v0] }, (chain) => Math.abs(runFor(chain, step, time).speed(0) - speedAt(low))),
    );
  });
});
