import { defaultForceModel, defaultRunOptions } from '../../../src/core/dynamics/index.ts';
import type { ForceModel, RunInput, RunOptions, Script, SpeedOrder } from '../../../src/core/dynamics/types.ts';
import { frontReach, rearReach } from '../../../src/core/stock/index.ts';
import type { Coupling, Drive, Train, Vehicle, VehicleEnd } from '../../../src/core/stock/types.ts';
import { makeTrack, straight, type Track } from '../../../src/core/track/index.ts';

/** Invented stock for solver tests: every number is plain so that expectations can be worked by hand. */
export const coupling: Coupling = {
  kind: 'loop',
  mount: 'pocket',
  pivotInset: 0.01,
  reach: 0.02,
  headHeight: 0.01,
  headHeightTolerance: 0,
  facingHeight: 0.002,
  engagement: 0.0015,
  faceTilt: 0,
  faceFriction: 0.2,
  freeSwing: 0.35,
  draftStiffness: 4000,
  buffStiffness: 4000,
  damping: 1,
  slack: 0,
  release: Number.POSITIVE_INFINITY,
};

const end = (c: Coupling): VehicleEnd => ({ coupling: c, buffers: null });

export function wagon(mass: number, c: Partial<Coupling> = {}, v: Partial<Vehicle> = {}): Vehicle {
  const half = { ...coupling, ...c };
  return {
    name: 'wagon',
    kind: 'wagon',
    mass,
    bodyLength: 0.1,
    bodyWidth: 0.03,
    bodyHeight: 0.045,
    underside: 0.008,
    massHeight: 0.02,
    massAhead: 0,
    pivotSpacing: 0.06,
    frontOverhang: 0.02,
    rearOverhang: 0.02,
    rigidWheelbase: 0.06,
    bogies: false,
    wheelRadius: 0.006,
    gauge: 0.0165,
    front: end(half),
    rear: end(half),
    rolling: { coulomb: 0.015, perSpeed: 0, breakaway: 1 },
    drive: null,
    ...v,
  };
}

export const drive: Drive = {
  drivenMass: 0.3,
  adhesion: 0.22,
  slidingAdhesion: 0.16,
  slipScale: 0.05,
  stallForce: 1.2,
  freeSpeed: 0.6,
  rotatingMass: 0.4,
  worm: true,
  drawbarHeight: 0.01,
  drivenWheelbase: 0.06,
  transferShare: 0,
};

export function engine(
  mass: number,
  d: Partial<Drive> = {},
  c: Partial<Coupling> = {},
  v: Partial<Vehicle> = {},
): Vehicle {
  return wagon(mass, c, { name: 'engine', kind: 'locomotive', drive: { ...drive, drivenMass: mass, ...d }, ...v });
}

export function level(length: number, grade = 0): Track {
  return makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(length)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: length, height: grade * length },
      ],
    },
  });
}

export const trainLength = (vehicles: readonly Vehicle[]) =>
  vehicles.reduce((sum, v) => sum + frontReach(v) + rearReach(v) + 0.02, 0);

export function trial(
  track: Track,
  vehicles: readonly Vehicle[],
  orders: readonly SpeedOrder[],
  more: { script?: Partial<Script>; options?: Partial<RunOptions>; forces?: Partial<ForceModel> } = {},
): RunInput {
  const train: Train = { name: 'test train', vehicles };
  return {
    path: { track, reversed: false },
    train,
    script: { start: trainLength(vehicles) + 0.3, finish: track.length - 0.01, timeLimit: 60, orders, ...more.script },
    options: { ...defaultRunOptions, ...more.options, forces: { ...defaultForceModel, ...more.forces } },
  };
}

export const at = (time: number, setting: number, ramp = 0): SpeedOrder => ({ when: { time }, setting, ramp });
