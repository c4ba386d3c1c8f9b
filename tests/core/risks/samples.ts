import type { Run, RunEvent } from '../../../src/core/dynamics/types.ts';
import type { RiskContext, Surroundings } from '../../../src/core/risks/types.ts';
import { makeJoint, placeCoupled } from '../../../src/core/stock/index.ts';
import type { Drive, Vehicle } from '../../../src/core/stock/types.ts';
import type { Track } from '../../../src/core/track/types.ts';

/** One instant of a made-up run. */
export interface Moment {
  /** Chainage of vehicle 0, m. */
  readonly lead: number;
  /** Force in every joint at the moment, N: draft positive; one number for all. Default 0. */
  readonly force?: number | readonly number[];
  /** Greatest draft and buff since the moment before; default what `force` says. */
  readonly draftPeak?: number;
  readonly buffPeak?: number;
  /** Stretch of every joint, m; default where the force puts it, 0 when there is none. */
  readonly extension?: number;
  /** Speed of every vehicle, m/s; default 0.2 for all. */
  readonly speed?: readonly number[];
  /** Of every locomotive. */
  readonly setting?: number;
  readonly rimSpeed?: number;
  readonly railForce?: number;
  readonly gripUse?: number;
  readonly motorLimit?: number;
  readonly gripLimit?: number;
  readonly demand?: number;
}

export interface Setting {
  readonly surroundings?: Surroundings;
  readonly propelled?: boolean;
  readonly reversed?: boolean;
  readonly events?: readonly RunEvent[];
}

/** Seconds from moment to moment. */
export const interval = 0.02;

/** A run that never went through a solver: every vehicle is put where the moments say, every force is as they say. */
export function madeUpTrial(
  track: Track,
  vehicles: readonly Vehicle[],
  moments: readonly Moment[],
  setting: Setting = {},
): RiskContext {
  const joints = vehicles.slice(1).map((trailing, j) => makeJoint(vehicles[j].rear.coupling, trailing.front.coupling));
  const locomotives = vehicles.flatMap((vehicle, i) => (vehicle.drive === null ? [] : [i]));
  const n = vehicles.length;
  const k = locomotives.length;
  const rows = (width: number): Float64Array => new Float64Array(width * moments.length);
  const run = {
    frames: moments.length,
    vehicles: n,
    interval,
    time: Float64Array.from(moments, (_, f) => f * interval),
    chainage: rows(n),
    speed: rows(n).fill(0.2),
    force: rows(n - 1),
    draftPeak: rows(n - 1),
    buffPeak: rows(n - 1),
    extension: rows(n - 1),
    locomotives: Int32Array.from(locomotives),
    setting: rows(k),
    rimSpeed: rows(k),
    railForce: rows(k),
    gripUse: rows(k),
    motorLimit: rows(k),
    gripLimit: rows(k),
    demand: rows(k),
    events: setting.events ?? [],
    outcome: 'arrived',
    energy: {
      motor: 0,
      kinetic: 0,
      potential: 0,
      stored: 0,
      rolling: 0,
      curve: 0,
      flange: 0,
      coupler: 0,
      slip: 0,
      holding: 0,
      residual: 0,
    },
    steps: 0,
  } satisfies Run;
  moments.forEach((moment, f) => {
    run.chainage[f * n] = moment.lead;
    joints.forEach((joint, j) => {
      const at = f * (n - 1) + j;
      const force = typeof moment.force === 'object' ? moment.force[j] : (moment.force ?? 0);
      const stretched =
        force > 0
          ? joint.slack / 2 + force / joint.draftStiffness
          : force < 0
            ? -joint.slack / 2 + force / joint.buffStiffness
            : 0;
      run.force[at] = force;
      run.draftPeak[at] = moment.draftPeak ?? Math.max(force, 0);
      run.buffPeak[at] = moment.buffPeak ?? Math.min(force, 0);
      run.extension[at] = moment.extension ?? stretched;
      run.chainage[f * n + j + 1] = placeCoupled(
        track,
        vehicles[j],
        vehicles[j + 1],
        run.chainage[f * n + j],
        run.extension[at],
      );
    });
    if (moment.speed !== undefined) run.speed.set(moment.speed, f * n);
    for (let e = 0; e < k; e++) {
      const at = f * k + e;
      run.setting[at] = moment.setting ?? 0;
      run.rimSpeed[at] = moment.rimSpeed ?? run.speed[f * n + locomotives[e]];
      run.railForce[at] = moment.railForce ?? 0;
      run.gripUse[at] = moment.gripUse ?? 0;
      run.motorLimit[at] = moment.motorLimit ?? 0;
      run.gripLimit[at] = moment.gripLimit ?? 0;
      run.demand[at] = moment.demand ?? 0;
    }
  });
  return {
    path: { track, reversed: setting.reversed ?? false },
    train: { name: 'Sample', vehicles },
    run,
    surroundings: setting.surroundings ?? { tracks: [track], deckDepth: 0.017 },
    propelled: setting.propelled ?? false,
  };
}

/** The same moment at even places from one chainage of vehicle 0 to another, m. */
export function passing(from: number, to: number, step: number, moment: Omit<Moment, 'lead'> = {}): Moment[] {
  const count = Math.round((to - from) / step);
  return Array.from({ length: count + 1 }, (_, f) => ({ ...moment, lead: from + f * step }));
}

/** A locomotive's drive: 200 g on driven wheels at 0.2, so 0.392 N of grip; 0.6 N of stall force. */
export const sampleDrive = (change: Partial<Drive> = {}): Drive => ({
  drivenMass: 0.2,
  adhesion: 0.2,
  slidingAdhesion: 0.15,
  slipScale: 0.05,
  stallForce: 0.6,
  freeSpeed: 0.6,
  rotatingMass: 0.2,
  worm: true,
  drawbarHeight: 0.01,
  drivenWheelbase: 0.06,
  transferShare: 0,
  ...change,
});
