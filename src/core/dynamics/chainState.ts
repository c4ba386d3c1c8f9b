import type { Train } from '../stock/types.ts';
import type { JointLaw } from './couplerLaw.ts';
import type { RouteTables } from './routeTables.ts';
import type { ForceModel } from './types.ts';

/** How a joint's force depends on its rate over the step. */
export const Contact = {
  slack: 0,
  draft: 1,
  buff: 2,
  /** Touch or release inside the step: linearised anew at every sweep. */
  mixed: 3,
} as const;

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

/** Everything the step needs, one array a quantity, so that the hot loops run over plain numbers. N vehicles, N-1 joints. */
export interface ChainState {
  readonly count: number;
  /** s, and the flange's friction on sideways load. */
  readonly step: number;
  readonly flangeFriction: number;
  readonly tables: RouteTables;

  /** By vehicle: rail distance m, speed m/s; mass kg, twice the mass by the step, weight N, and weight times the rolling coefficients. */
  readonly sigma: Float64Array;
  readonly speed: Float64Array;
  readonly mass: Float64Array;
  readonly weight: Float64Array;
  readonly inertia: Float64Array;
  readonly dryWeight: Float64Array;
  readonly wetWeight: Float64Array;
  readonly breakaway: Float64Array;

  /** Gathered once a step, by vehicle: forces N, viscous N·s/m, flange friction per newton of coupling force. */
  readonly gravity: Float64Array;
  readonly rolling: Float64Array;
  readonly curve: Float64Array;
  readonly viscous: Float64Array;
  readonly flange: Float64Array;

  /** Branches by vehicle: way friction acts (±1, 0 at rest); whether the end speed is prescribed and to what, m/s. */
  readonly slide: Int8Array;
  readonly held: Uint8Array;
  readonly heldSpeed: Float64Array;
  /** What an engine adds to its row. */
  readonly addDiagonal: Float64Array;
  readonly addRight: Float64Array;
  readonly isEngine: Uint8Array;

  /** By joint: law (arrays mirror `laws`), extension at the start of the step m, branch, force = base + slope·rate. */
  readonly laws: JointLaw[];
  readonly draftStiffness: Float64Array;
  readonly buffStiffness: Float64Array;
  readonly damping: Float64Array;
  readonly draftPlay: Float64Array;
  readonly buffPlay: Float64Array;
  readonly release: Float64Array;
  readonly extension: Float64Array;
  readonly contact: Uint8Array;
  readonly base: Float64Array;
  readonly slope: Float64Array;
  /** Lever of the leading and the trailing vehicle's speed in the joint's rate: 1 but for the curve's change of length. */
  readonly front: Float64Array;
  readonly rear: Float64Array;
  readonly rate: Float64Array;
  /** Averaged over the last step, N. */
  readonly force: Float64Array;
  readonly draftPeak: Float64Array;
  readonly buffPeak: Float64Array;

  /** Solver's own: mean speeds, and the eliminated rows. */
  readonly mean: Float64Array;
  readonly upper: Float64Array;
  readonly right: Float64Array;
  readonly losses: Losses;
}

export function createChainState(
  train: Train,
  tables: RouteTables,
  laws: readonly JointLaw[],
  release: Float64Array,
  forces: ForceModel,
  step: number,
  startSigma: Float64Array,
): ChainState {
  const { vehicles } = train;
  const n = vehicles.length;
  const each = (value: (v: (typeof vehicles)[number]) => number) => Float64Array.from(vehicles, value);
  const eachJoint = (value: (law: JointLaw) => number) => Float64Array.from(laws, value);
  const zeros = () => new Float64Array(n);
  return {
    count: n,
    step,
    flangeFriction: forces.flangeFriction,
    tables,
    sigma: Float64Array.from(startSigma),
    speed: zeros(),
    mass: each((v) => v.mass),
    weight: each((v) => v.mass * forces.gravity),
    inertia: each((v) => (2 * v.mass) / step),
    dryWeight: each((v) => v.mass * forces.gravity * v.rolling.coulomb),
    wetWeight: each((v) => v.mass * forces.gravity * v.rolling.perSpeed),
    breakaway: each((v) => v.rolling.breakaway),
    gravity: zeros(),
    rolling: zeros(),
    curve: zeros(),
    viscous: zeros(),
    flange: zeros(),
    slide: new Int8Array(n),
    held: new Uint8Array(n).fill(1),
    heldSpeed: zeros(),
    addDiagonal: zeros(),
    addRight: zeros(),
    isEngine: Uint8Array.from(vehicles, (v) => (v.drive ? 1 : 0)),
    laws: [...laws],
    draftStiffness: eachJoint((l) => l.draftStiffness),
    buffStiffness: eachJoint((l) => l.buffStiffness),
    damping: eachJoint((l) => l.damping),
    draftPlay: eachJoint((l) => l.draftPlay),
    buffPlay: eachJoint((l) => l.buffPlay),
    release,
    extension: zeros(),
    contact: new Uint8Array(n),
    base: zeros(),
    slope: zeros(),
    front: zeros().fill(1),
    rear: zeros().fill(1),
    rate: zeros(),
    force: zeros(),
    draftPeak: zeros(),
    buffPeak: zeros(),
    mean: zeros(),
    upper: zeros(),
    right: zeros(),
    losses: { motor: 0, rolling: 0, curve: 0, flange: 0, coupler: 0, slip: 0, holding: 0 },
  };
}
