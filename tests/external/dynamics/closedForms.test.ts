import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import { arc, makeTrack, straight } from '../../../src/core/track/index.ts';
import { chainOn } from '../../core/dynamics/chains.ts';
import { at, engine, level, trial, wagon } from '../../core/dynamics/trains.ts';
import { odexSolver } from '../../odexSolver.ts';

const free = { rolling: { coulomb: 0, perSpeed: 0, breakaway: 1 } };
const noDrag = { curveFactor: 0, flangeFriction: 0 };
const g = 9.80665;

describe('two vehicles that run into each other', () => {
  // Schwager and Pöschel, "Coefficient of restitution and linear-dashpot model revisited", Granular Matter 9 (2007): a
  // spring and dashpot whose contact ends when the force, not the overlap, is zero. The formula is from memory; the
  // number it gives is confirmed here by integrating the contact with a general ODE library.
  const k = 4000;
  const c = 1.6;
  const m = [0.12, 0.3] as const;
  const reduced = (m[0] * m[1]) / (m[0] + m[1]);

  const byFormula = () => {
    const beta = c / (2 * reduced);
    const omega = Math.sqrt(k / reduced - beta * beta);
    return Math.exp((-beta / omega) * (Math.PI - Math.atan2(2 * beta * omega, omega * omega - beta * beta)));
  };

  function byOde(): number {
    const solver = odexSolver(2, 1e-12);
    const slope = (_t: number, [x, v]: number[]) => [v!, -(k * x! + c * v!) / reduced];
    const force = (t: number) => {
      const [x, v] = solver.solve(slope, 0, [0, 1], t).y as [number, number];
      return { f: k * x + c * v, v };
    };
    let low = 0.2 * Math.PI * Math.sqrt(reduced / k);
    let high = Math.PI * Math.sqrt(reduced / k) * 1.2;
    for (let i = 0; i < 50; i++) {
      const mid = 0.5 * (low + high);
      if (force(mid).f > 0) low = mid;
      else high = mid;
    }
    return -force(low).v;
  }

  it('part again at the restitution of a contact that cannot pull', () => {
    expect(byOde()).toBeCloseTo(byFormula(), 8);
    // The textbook exp(-πζ/√(1-ζ²)) would end contact too late.
    const zeta = c / (2 * Math.sqrt(k * reduced));
    expect(byFormula()).toBeGreaterThan(Math.exp((-Math.PI * zeta) / Math.sqrt(1 - zeta * zeta)));

    // Half of k and twice of c in each half: two halves in series make the joint.
    const half = { draftStiffness: 2 * k, buffStiffness: 2 * k, damping: 2 * c, slack: 0.05 };
    const vehicles = [wagon(m[0], half, free), wagon(m[1], half, free)];
    const chain = chainOn(level(20), vehicles, 8, { step: 2e-5, forces: noDrag, speeds: [0, 0.4], gaps: [-0.0495] });
    chain.advance(10_000);
    const [v0, v1] = [chain.speed(0), chain.speed(1)];
    expect(m[0] * v0 + m[1] * v1).toBeCloseTo(m[1] * 0.4, 10);
    expect((v0 - v1) / 0.4).toBeCloseTo(byFormula(), 3);
  });
});

describe('a free chain of n equal masses and springs', () => {
  // Any textbook on vibrations: ω_j = 2·√(k/m)·sin(jπ/2n), mode shape cos((i + ½)jπ/n).
  const n = 8;
  const m = 0.08;
  const k = 1500;
  it.each([1, 2, 3, 5, 7])('swings in its mode %i at the textbook frequency', (j) => {
    const half = { draftStiffness: 2 * k, buffStiffness: 2 * k, damping: 0, slack: 0 };
    const truck = wagon(m, half, free);
    const shape = Array.from({ length: n }, (_, i) => 0.01 * Math.cos(((i + 0.5) * j * Math.PI) / n));
    const step = 2e-5;
    const chain = chainOn(level(20), new Array(n).fill(truck), 10, { step, forces: noDrag, speeds: shape });
    const crossings: number[] = [];
    let before = chain.speed(0);
    for (let i = 0; crossings.length < 9; i++) {
      chain.advance(1);
      const now = chain.speed(0);
      if (before * now < 0) crossings.push((i + before / (before - now)) * step);
      before = now;
    }
    const period = (crossings[8]! - crossings[0]!) / 4;
    const omega = 2 * Math.sqrt(k / m) * Math.sin((j * Math.PI) / (2 * n));
    expect((2 * Math.PI) / period / omega).toBeCloseTo(1, 4);
  });
});

describe('coasting to rest', () => {
  it('takes v²/(2·c·g) on Coulomb friction', () => {
    const chain = chainOn(level(20), [wagon(0.1)], 5, { forces: noDrag, speeds: [0.5] });
    const from = chain.sigma(0);
    chain.advance(6000);
    expect(chain.speed(0)).toBe(0);
    // The last step stops within itself: at most half a step's way is in doubt, 0.5·c·g·h² = 7e-8 m.
    expect(chain.sigma(0) - from).toBeCloseTo(0.25 / (2 * 0.015 * g), 6);
  });

  it('takes (1/b)·ln(1 + b·v/a) with a drag a + b·v by mass', () => {
    const rolling = { coulomb: 0.01, perSpeed: 0.02, breakaway: 1 };
    const a = 0.01 * g;
    const b = 0.02 * g;
    const chain = chainOn(level(20), [wagon(0.1, {}, { rolling })], 5, { forces: noDrag, speeds: [0.5] });
    let steps = 0;
    while (chain.speed(0) !== 0) {
      chain.advance(1);
      steps++;
    }
    expect(Math.abs(steps * 0.001 - Math.log(1 + (b * 0.5) / a) / b)).toBeLessThanOrEqual(0.001);
  });
});

describe('an engine that starts alone', () => {
  it('nears its free speed with the time constant (mass + rotating mass)/(stall force/free speed)', () => {
    const alone = engine(0.4, { rotatingMass: 0.6, stallForce: 1.2, freeSpeed: 0.6 }, {}, free);
    const result = run(trial(level(8), [alone], [at(0, 0.5)], { script: { start: 0.5, timeLimit: 3 } }));
    const tau = (0.4 + 0.6) / (1.2 / 0.6);
    for (const time of [0.2, 0.5, 1, 2]) {
      const v = result.speed[Math.round(time / result.interval)]!;
      expect(v / (0.3 * (1 - Math.exp(-time / tau)))).toBeCloseTo(1, 4);
    }
  });
});

describe('a train in a curve whose flanges rub on the sideways coupling load', () => {
  // values worked for a continuous train: T(L) = w·g·(R/μ)·(e^(μL/R) - 1), the rope-and-post equation with load along it.
  const weightPerLength = 3.924;
  const demand = 0.045;
  const mu = 0.1;
  const radius = 0.6;
  /** Force at the engine, N: of a train it draws round the curve, or pushes round it back. */
  const pull = (vehicles: number, way: 1 | -1 = 1) => {
    const each = 2 / vehicles;
    const small = { pivotInset: 0.001, reach: 0.001, draftStiffness: 1e5, buffStiffness: 1e5, damping: 5 };
    const car = wagon((weightPerLength * each) / g, small, {
      bodyLength: each,
      pivotSpacing: 0.5 * each,
      frontOverhang: 0.25 * each,
      rearOverhang: 0.25 * each,
      rolling: { coulomb: demand, perSpeed: 0, breakaway: 1 },
    });
    const front = engine(0.5, { adhesion: 0.5, stallForce: 4 }, small);
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(0.2), arc(radius, 14)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const result = run(
      trial(track, [front, ...new Array(vehicles).fill(car)], [at(0.1, way * 0.4, 1)], {
        script: { start: way > 0 ? 3 : 7, timeLimit: 8 },
        forces: { curveFactor: 0, flangeFriction: mu },
      }),
    );
    expect(result.outcome).toBe('time-limit');
    return result.force[(result.frames - 1) * vehicles]!;
  };

  it('pulls 0.35316 N on the straight and tends to 0.41914 N in the curve as vehicles get shorter', () => {
    const continuous = weightPerLength * demand * (radius / mu) * (Math.exp((mu * 2) / radius) - 1);
    expect(continuous).toBeCloseTo(0.41914, 5);
    const coarse = Math.abs(pull(10) / continuous - 1);
    const fine = Math.abs(pull(40) / continuous - 1);
    expect(coarse).toBeLessThan(5e-3);
    expect(fine).toBeLessThan(5e-4);
    // Second order in the length of a vehicle or better: a quarter of the length takes the error down at least fourfold.
    expect(fine).toBeLessThan(coarse / 4);
  });

  it('pushes as hard round it as it pulls: the load presses outward then, and rubs alike', () => {
    const continuous = weightPerLength * demand * (radius / mu) * (Math.exp((mu * 2) / radius) - 1);
    expect(Math.abs(pull(40, -1) / -continuous - 1)).toBeLessThan(5e-4);
  });
});

describe('a string of light vehicles round a bend, with a dragging one at its end', () => {
  // Euler-Eytelwein, T = T₀·e^(μθ): here the flange's friction times sliding ratio stands for μ, vehicles for the rope.
  it.each([
    [0.1, Math.PI / 2, 1.17],
    [0.2, Math.PI / 2, 1.369],
    [0.1, Math.PI, 1.369],
    [0.3, Math.PI, 2.566],
    [0.1, 2 * Math.PI, 1.874],
    [0.1, 4 * Math.PI, 3.514],
  ])('multiplies the pull by e^(μθ): μ %f, θ %f', (mu, angle, ratio) => {
    expect(Math.exp(mu * angle)).toBeCloseTo(ratio, 3);
    const radius = 0.6;
    // Links of at most 4.5 degrees each.
    const count = Math.max(40, Math.round((40 * angle) / Math.PI));
    const each = (radius * angle) / count;
    const small = { pivotInset: 0.001, reach: 0.001, draftStiffness: 1e5, buffStiffness: 1e5, damping: 5 };
    const body = { bodyLength: each, pivotSpacing: 0.5 * each, frontOverhang: 0.25 * each, rearOverhang: 0.25 * each };
    const link = wagon(1e-4, small, { ...body, ...free });
    const dragging = wagon(0.05, small, { ...body, rolling: { coulomb: 0.4, perSpeed: 0, breakaway: 1 } });
    const front = engine(0.5, { adhesion: 0.9, stallForce: 4 }, small, { ...body, ...free });
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(0.5), arc(radius, angle + 2)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const vehicles = [front, ...new Array(count).fill(link), dragging];
    const result = run(
      trial(track, vehicles, [at(0.1, 0.3, 1)], {
        script: { start: 0.5 + radius * (angle + 0.6), timeLimit: 5 },
        forces: { curveFactor: 0, flangeFriction: mu },
      }),
    );
    const last = (result.frames - 1) * (vehicles.length - 1);
    expect(result.outcome).toBe('time-limit');
    // The links' own corners are chords of a circle: a twelfth of the square of their angle, of the exponent, and half a link at either end.
    expect(result.force[last]! / result.force[last + count]! / ratio).toBeCloseTo(1, 2);
  });
});
