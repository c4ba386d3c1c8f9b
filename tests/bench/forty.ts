import { run, steadyRun } from '../../src/core/dynamics/index.ts';
import type { Run, RunInput } from '../../src/core/dynamics/types.ts';
import { arc, helix, makeTrack, straight, transition } from '../../src/core/track/index.ts';
import { at, engine, trial, wagon } from '../core/dynamics/trains.ts';

/** What the quasi-static pass is to do in 20 ms: a route of 40 m and 30 vehicles no two of which are alike. */
const setting = 0.6;
const everyStation = 0.02;

/** Easements, a helix of two turns, a curve the other way, five grades with vertical curves between. */
const route = () =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [
      straight(6),
      transition(0.6, 0, 1 / 0.7),
      helix(0.7, 2),
      transition(0.6, 1 / 0.7, 0),
      straight(7),
      transition(0.5, 0, -1 / 0.9),
      arc(0.9, -2),
      transition(0.5, -1 / 0.9, 0),
      straight(40 - 6 - 1.2 - 4 * Math.PI * 0.7 - 7 - 1 - 1.8),
    ],
    profile: {
      points: [
        { chainage: 0, height: 0.2 },
        { chainage: 6, height: 0.2, curve: { length: 0.6 } },
        { chainage: 17, height: 0.398, curve: { length: 0.8 } },
        { chainage: 25, height: 0.478, curve: { length: 0.6 } },
        { chainage: 33, height: 0.598, curve: { length: 0.8 } },
        { chainage: 40, height: 0.598 },
      ],
    },
  });

/** Lengths, masses, drag, and couplings of every other vehicle: all different. */
const stock = () =>
  Array.from({ length: 30 }, (_, i) => {
    const bodyLength = 0.08 + 0.004 * ((i * 7) % 30);
    const shape = {
      bodyLength,
      pivotSpacing: 0.6 * bodyLength,
      rigidWheelbase: i % 3 === 0 ? 0.03 : 0.5 * bodyLength,
      bogies: i % 3 === 0,
      frontOverhang: 0.2 * bodyLength,
      rearOverhang: 0.2 * bodyLength,
      rolling: { coulomb: 0.012 + 0.0002 * i, perSpeed: 0.004 + 0.0003 * i, breakaway: 1 },
    };
    const couplings = {
      slack: 0.0002 + 0.00002 * i,
      draftStiffness: 2000 + 150 * i,
      buffStiffness: 2500 + 100 * i,
      damping: 2,
      reach: 0.015 + 0.0003 * i,
    };
    if (i > 0) return wagon(0.04 + 0.0015 * ((i * 11) % 30), couplings, shape);
    const motor = { stallForce: 4, freeSpeed: 0.6, rotatingMass: 0.5, adhesion: 0.4, drivenMass: 1.2 };
    return engine(1.2, motor, couplings, shape);
  });

export const forty = (): RunInput => trial(route(), stock(), [at(0, setting, 1)], { script: { timeLimit: 300 } });

export const steadyForty = (input: RunInput): Run => steadyRun(input, { every: everyStation, setting });

/** How well the quasi-static pass agrees with the full run where motion is steady. */
export interface Agreement {
  /** Share of the way at which the motion of the full run is steady. */
  readonly steadyShare: number;
  /** Greatest difference of the train's speed, as a share of it; of a coupling force, as a share of the greatest in the train there. */
  readonly speed: number;
  readonly force: number;
}

/** Time over which a change of speed is seen, s either side. */
const AROUND = 0.1;
/** Motion is steady where all that masses take to change speed is under this share of the greatest coupling force. */
const STEADY = 0.0025;

/** Runs both, and compares them at every frame of the full run in which it is steady by its own speeds. */
export function agreementOf(input: RunInput): Agreement {
  const full = run(input);
  const steady = steadyForty(input);
  const { vehicles } = input.train;
  const n = vehicles.length;
  const span = Math.round(AROUND / full.interval);
  let way = 0;
  let speed = 0;
  let force = 0;
  let f = 0;
  for (let a = span; a + span < full.frames; a++) {
    const lead = full.chainage[a * n]!;
    while (f + 2 < steady.frames && steady.chainage[(f + 1) * n]! <= lead) f++;
    const forces = full.force.subarray(a * (n - 1), (a + 1) * (n - 1));
    const scale = forces.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
    const taken = vehicles.reduce((sum, { mass, drive }, i) => {
      const change = full.speed[(a + span) * n + i]! - full.speed[(a - span) * n + i]!;
      return sum + ((mass + (drive?.rotatingMass ?? 0)) * Math.abs(change)) / (2 * AROUND);
    }, 0);
    if (!(taken < STEADY * scale)) continue;
    way += full.chainage[(a + 1) * n]! - lead;
    const share = (lead - steady.chainage[f * n]!) / (steady.chainage[(f + 1) * n]! - steady.chainage[f * n]!);
    const between = (column: Float64Array, wide: number, i: number) =>
      column[f * wide + i]! * (1 - share) + column[(f + 1) * wide + i]! * share;
    speed = Math.max(speed, Math.abs(between(steady.speed, n, 0) / full.speed[a * n]! - 1));
    forces.forEach((one, j) => {
      force = Math.max(force, Math.abs(between(steady.force, n - 1, j) - one) / scale);
    });
  }
  return { steadyShare: way / (full.chainage[(full.frames - 1) * n]! - full.chainage[0]!), speed, force };
}
