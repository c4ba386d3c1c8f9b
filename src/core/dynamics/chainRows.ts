import type { Train } from '../stock/types.ts';
import type { JointLaw } from './couplerLaw.ts';
import type { RouteTables } from './routeTables.ts';
import type { ForceModel } from './types.ts';

/*
 * A train in memory: one row of numbers a vehicle, with the joint to the vehicle behind in the same row. The sweeps
 * touch nearly every number of a row one after another; side by side they come with the same few lines of cache and one
 * base address, which made the step twice as fast as an array for each quantity.
 */

/** Numbers in a row. The last vehicle's joint is there too: free, forceless and never moved. */
export const STRIDE = 40;

/** Rail distance of the origin, m; speed, m/s; mean speed over the step as solved, m/s. */
export const SIGMA = 0;
export const SPEED = 1;
export const MEAN = 2;
/** Twice the mass by the step, kg/s; weight, N; weight times Coulomb and times speed coefficient of rolling; breakaway factor. */
export const INERTIA = 3;
export const WEIGHT = 4;
export const DRY = 5;
export const WET = 6;
export const BREAKAWAY = 7;
/** Gathered at the step's middle: grade, rolling and curve force N, viscous N·s/m, flange friction per newton of coupling force. */
export const GRADE = 8;
export const ROLLING = 9;
export const CURVE = 10;
export const VISCOUS = 11;
export const FLANGE = 12;
/** Branches: way friction acts (±1, 0 at rest); 1 where the end speed is prescribed, and to what, m/s. */
export const SLIDE = 13;
export const HELD = 14;
export const HELD_SPEED = 15;
/** What an engine adds to its row of the system; 1 where the vehicle is one. */
export const ADD_DIAGONAL = 16;
export const ADD_RIGHT = 17;
export const IS_ENGINE = 18;
/** The eliminated row. */
export const UPPER = 19;
export const RIGHT = 20;
/** Offset of the vehicle's and of the joint's route table. */
export const VEHICLE_TABLE = 21;
export const JOINT_TABLE = 22;
/** Joint: spacing at free length, stiffness N/m, damping N·s/m, play either side m, release force N. */
export const SPACING = 23;
export const DRAFT_STIFFNESS = 24;
export const BUFF_STIFFNESS = 25;
export const DAMPING = 26;
export const DRAFT_PLAY = 27;
export const BUFF_PLAY = 28;
export const RELEASE = 29;
/** Joint: extension at the step's start m, rate m/s, branch, force = base + slope·rate, levers of the two speeds in the rate. */
export const EXTENSION = 30;
export const RATE = 31;
export const CONTACT = 32;
export const BASE = 33;
export const SLOPE = 34;
export const FRONT = 35;
export const REAR = 36;
/** Joint: force averaged over the step, N, and its extremes since the last frame. */
export const FORCE = 37;
export const DRAFT_PEAK = 38;
export const BUFF_PEAK = 39;

/** Branches of a joint over a step: how its force depends on its rate. */
export const SLACK = 0;
export const IN_DRAFT = 1;
export const IN_BUFF = 2;
/** Touch or release inside the step: linearised anew at every sweep. */
export const MIXED = 3;

/** Work taken by each loss since the start, J; `motor` is what went in. */
export interface Losses {
  motor: number;
  rolling: number;
  curve: number;
  flange: number;
  coupler: number;
  slip: number;
  holding: number;
}

export interface ChainRows {
  readonly count: number;
  /** s, and the flange's friction on sideways load. */
  readonly step: number;
  readonly flangeFriction: number;
  readonly tables: RouteTables;
  readonly rows: Float64Array;
  /** By joint; the rows carry the same numbers for the sweeps. */
  readonly laws: JointLaw[];
  readonly losses: Losses;
}

/** Lays out a train at rest at the places given, every joint's law and the route's tables in its rows. */
export function createChainRows(
  train: Train,
  tables: RouteTables,
  laws: readonly JointLaw[],
  release: Float64Array,
  forces: ForceModel,
  step: number,
  startSigma: Float64Array,
): ChainRows {
  const { vehicles } = train;
  const rows = new Float64Array(vehicles.length * STRIDE);
  vehicles.forEach((vehicle, i) => {
    const v = i * STRIDE;
    const weight = vehicle.mass * forces.gravity;
    rows[v + SIGMA] = startSigma[i]!;
    rows[v + INERTIA] = (2 * vehicle.mass) / step;
    rows[v + WEIGHT] = weight;
    rows[v + DRY] = weight * vehicle.rolling.coulomb;
    rows[v + WET] = weight * vehicle.rolling.perSpeed;
    rows[v + BREAKAWAY] = vehicle.rolling.breakaway;
    rows[v + HELD] = 1;
    rows[v + IS_ENGINE] = vehicle.drive ? 1 : 0;
    rows[v + VEHICLE_TABLE] = tables.vehicleAt[i]!;
    rows[v + FRONT] = 1;
    rows[v + REAR] = 1;
    rows[v + RELEASE] = Number.POSITIVE_INFINITY;
    const law = laws[i];
    if (law === undefined) return;
    rows[v + JOINT_TABLE] = tables.jointAt[i]!;
    rows[v + SPACING] = tables.spacing[i]!;
    rows[v + DRAFT_STIFFNESS] = law.draftStiffness;
    rows[v + BUFF_STIFFNESS] = law.buffStiffness;
    rows[v + DAMPING] = law.damping;
    rows[v + DRAFT_PLAY] = law.draftPlay;
    rows[v + BUFF_PLAY] = law.buffPlay;
    rows[v + RELEASE] = release[i]!;
  });
  return {
    count: vehicles.length,
    step,
    flangeFriction: forces.flangeFriction,
    tables,
    rows,
    laws: [...laws],
    losses: { motor: 0, rolling: 0, curve: 0, flange: 0, coupler: 0, slip: 0, holding: 0 },
  };
}
