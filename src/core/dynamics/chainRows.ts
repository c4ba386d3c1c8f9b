/*
 * Over 300 lines for a reason: the layout of a row and the loops that run over it stand in one file, because only there
 * are the row's places compiled to plain numbers. Reached through an import they cost a load each, and the step takes
 * nearly twice as long (measured on Node 20).
 *
 * A train in memory: one row of numbers a vehicle, with the joint to the vehicle behind in the same row. The sweeps
 * touch nearly every number of a row one after another; side by side they come with the same few lines of cache and one
 * base address.
 */
import type { Train } from '../stock/types.ts';
import { type AveragedForce, averagedForce, type JointLaw, storedEnergy } from './couplerLaw.ts';
import { chainageAt, pivotShift, type RouteTables } from './routeTables.ts';
import type { ForceModel } from './types.ts';

/** Places of the numbers in a row. */
export const enum Row {
  /** Rail distance of the origin, m; speed, m/s; mean speed over the step as solved, m/s. */
  sigma = 0,
  speed = 1,
  mean = 2,
  /** Twice the mass by the step, kg/s; weight, N; weight times Coulomb and times speed coefficient of rolling; breakaway factor. */
  inertia = 3,
  weight = 4,
  dry = 5,
  wet = 6,
  breakaway = 7,
  /** Gathered at the step's middle: grade, rolling and curve force N, viscous N·s/m, flange friction per newton of coupling force. */
  grade = 8,
  rolling = 9,
  curve = 10,
  viscous = 11,
  flange = 12,
  /** Branches: way friction acts (±1, 0 at rest); 1 where the end speed is prescribed, and to what, m/s. */
  slide = 13,
  held = 14,
  heldSpeed = 15,
  /** What an engine adds to its row of the system; 1 where the vehicle is one. */
  addDiagonal = 16,
  addRight = 17,
  isEngine = 18,
  /** The eliminated row. */
  upper = 19,
  right = 20,
  /** Offset of the vehicle's and of the joint's route table. */
  vehicleTable = 21,
  jointTable = 22,
  /** Joint: spacing at free length, stiffness N/m, damping N·s/m, play either side m, release force N. */
  spacing = 23,
  draftStiffness = 24,
  buffStiffness = 25,
  damping = 26,
  draftPlay = 27,
  buffPlay = 28,
  release = 29,
  /** Joint: extension at the step's start m, rate m/s, branch, force = base + slope·rate, levers of the two speeds in the rate. */
  extension = 30,
  rate = 31,
  contact = 32,
  base = 33,
  slope = 34,
  front = 35,
  rear = 36,
  /** Joint: force averaged over the step, N, and its extremes since the last frame. */
  force = 37,
  draftPeak = 38,
  buffPeak = 39,
  /** Numbers in a row. The last vehicle's joint is there too: free, forceless and never moved. */
  stride = 40,
}

/** Branches of a joint over a step: how its force depends on its rate. */
const enum Contact {
  slack = 0,
  draft = 1,
  buff = 2,
  /** Touch or release inside the step: linearised anew at every sweep. */
  mixed = 3,
}

/** Values a node of the vehicles' route tables, as routeTables.ts lays them out. */
const enum Table {
  stride = 4,
}

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
  const rows = new Float64Array(vehicles.length * Row.stride);
  vehicles.forEach((vehicle, i) => {
    const v = i * Row.stride;
    const weight = vehicle.mass * forces.gravity;
    rows[v + Row.sigma] = startSigma[i]!;
    rows[v + Row.inertia] = (2 * vehicle.mass) / step;
    rows[v + Row.weight] = weight;
    rows[v + Row.dry] = weight * vehicle.rolling.coulomb;
    rows[v + Row.wet] = weight * vehicle.rolling.perSpeed;
    rows[v + Row.breakaway] = vehicle.rolling.breakaway;
    rows[v + Row.held] = 1;
    rows[v + Row.isEngine] = vehicle.drive ? 1 : 0;
    rows[v + Row.vehicleTable] = tables.vehicleAt[i]!;
    rows[v + Row.front] = 1;
    rows[v + Row.rear] = 1;
    rows[v + Row.release] = Number.POSITIVE_INFINITY;
    const law = laws[i];
    if (law === undefined) return;
    rows[v + Row.jointTable] = tables.jointAt[i]!;
    rows[v + Row.spacing] = tables.spacing[i]!;
    rows[v + Row.draftStiffness] = law.draftStiffness;
    rows[v + Row.buffStiffness] = law.buffStiffness;
    rows[v + Row.damping] = law.damping;
    rows[v + Row.draftPlay] = law.draftPlay;
    rows[v + Row.buffPlay] = law.buffPlay;
    rows[v + Row.release] = release[i]!;
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

const averaged: AveragedForce = { force: 0, slope: 0 };

/** Newton stops when a mixed joint's force agrees with its linearisation to this share, or this much, N. */
const FORCE_SHARE = 1e-10;
const FORCE_FLOOR = 1e-12;

/**
 * Looks up what the route asks at the step's middle, linearises every joint at its present rate, and eliminates the
 * tridiagonal system for the branches as chosen.
 */
export function sweepForward(chain: ChainRows): void {
  const { rows: r, step, flangeFriction } = chain;
  const { vehicle, joint, origin, node, nodes } = chain.tables;
  const half = 0.5 * step;
  const perNode = 1 / node;
  const lastNode = nodes - 2;
  const last = (chain.count - 1) * Row.stride;
  let c = 0;
  let d = 0;
  let aheadBase = 0;
  let aheadSlope = 0;
  let aheadFront = 1;
  let aheadRear = 1;
  let aheadForce = 0;
  let place = r[Row.sigma]!;
  for (let v = 0; v <= last; v += Row.stride) {
    const v0 = r[v + Row.speed]!;
    const x = (place + half * v0 - origin) * perNode;
    let k = x | 0;
    if (k < 0) k = 0;
    else if (k > lastNode) k = lastNode;
    const t = x - k;
    const at = (r[v + Row.vehicleTable]! | 0) + k * Table.stride;
    const w = r[v + Row.weight]!;
    const sine = vehicle[at]!;
    const cosine = vehicle[at + 1]!;
    const bend = vehicle[at + 2]!;
    const angle = vehicle[at + 3]!;
    const cos = cosine + (vehicle[at + 5]! - cosine) * t;
    const grade = w * (sine + (vehicle[at + 4]! - sine) * t);
    const rolling = r[v + Row.dry]! * cos;
    const viscous = r[v + Row.wet]! * cos;
    const curve = w * (bend + (vehicle[at + 6]! - bend) * t);
    const flange = flangeFriction * (angle + (vehicle[at + 7]! - angle) * t);
    r[v + Row.grade] = grade;
    r[v + Row.rolling] = rolling;
    r[v + Row.curve] = curve;
    r[v + Row.viscous] = viscous;
    r[v + Row.flange] = flange;

    let jBase = 0;
    let jSlope = 0;
    let jFront = 1;
    let jRear = 1;
    let jForce = 0;
    if (v < last) {
      const behind = r[v + Row.stride + Row.sigma]!;
      const y = (0.5 * (place + behind) - origin) * perNode;
      let m = y | 0;
      if (m < 0) m = 0;
      else if (m > lastNode) m = lastNode;
      const entry = (r[v + Row.jointTable]! | 0) + m;
      const q = joint[entry]!;
      const dq = joint[entry + 1]! - q;
      const e0 = place - behind - r[v + Row.spacing]! + q + dq * (y - m);
      const tilt = 0.5 * dq * perNode;
      jFront = 1 + tilt;
      jRear = 1 - tilt;
      place = behind;
      const rate = r[v + Row.rate]!;
      const damping = r[v + Row.damping]!;
      const intoDraft = e0 - r[v + Row.draftPlay]!;
      const intoBuff = -e0 - r[v + Row.buffPlay]!;
      let contact = Contact.mixed;
      if (intoDraft >= 0) {
        const stiffness = r[v + Row.draftStiffness]!;
        const begin = stiffness * intoDraft + damping * rate;
        if (begin >= 0 && begin + stiffness * rate * step >= 0) {
          contact = Contact.draft;
          jBase = stiffness * intoDraft;
          jSlope = half * stiffness + damping;
        }
      } else if (intoBuff >= 0) {
        const stiffness = r[v + Row.buffStiffness]!;
        const begin = stiffness * intoBuff - damping * rate;
        if (begin >= 0 && begin - stiffness * rate * step >= 0) {
          contact = Contact.buff;
          jBase = -stiffness * intoBuff;
          jSlope = half * stiffness + damping;
        }
      } else if (intoDraft + rate * step <= 0 && intoBuff - rate * step <= 0) contact = Contact.slack;
      if (contact === Contact.mixed) {
        averagedForce(chain.laws[v / Row.stride]!, e0, rate, step, averaged);
        jSlope = averaged.slope;
        jBase = averaged.force - jSlope * rate;
      }
      r[v + Row.contact] = contact;
      r[v + Row.extension] = e0;
      r[v + Row.base] = jBase;
      r[v + Row.slope] = jSlope;
      r[v + Row.front] = jFront;
      r[v + Row.rear] = jRear;
      jForce = r[v + Row.force]!;
    }

    if (r[v + Row.held]! !== 0) {
      c = 0;
      d = 0.5 * (v0 + r[v + Row.heldSpeed]!);
    } else {
      const s = r[v + Row.slide]!;
      const inertia = r[v + Row.inertia]!;
      const grip = aheadForce + jForce >= 0 ? s * flange : -s * flange;
      const pull = aheadRear - grip;
      const hold = jFront + grip;
      const pullSlope = pull * aheadSlope;
      const holdSlope = hold * jSlope;
      const lower = -pullSlope * aheadFront;
      const diagonal = inertia + viscous + r[v + Row.addDiagonal]! + pullSlope * aheadRear + holdSlope * jFront;
      const right =
        inertia * v0 - grade - s * (rolling + curve) + r[v + Row.addRight]! + pull * aheadBase - hold * jBase;
      const pivot = 1 / (diagonal - lower * c);
      d = (right - lower * d) * pivot;
      c = -holdSlope * jRear * pivot;
    }
    r[v + Row.upper] = c;
    r[v + Row.right] = d;
    aheadBase = jBase;
    aheadSlope = jSlope;
    aheadFront = jFront;
    aheadRear = jRear;
    aheadForce = jForce;
  }
}

/**
 * Substitutes back for the mean speeds, rates and forces, and checks every branch but the engines' against them.
 * Returns whether all had been right; wrong ones are changed, at most one of the vehicles' when `single`.
 */
export function sweepBack(chain: ChainRows, single: boolean): boolean {
  const { rows: r, step } = chain;
  const last = (chain.count - 1) * Row.stride;
  let settled = true;
  let anyHeld = false;
  let mean = r[last + Row.right]!;
  r[last + Row.mean] = mean;
  for (let v = last; ; v -= Row.stride) {
    if (r[v + Row.held]! === 0) {
      if (
        (2 * mean - r[v + Row.speed]!) * r[v + Row.slide]! < 0 &&
        r[v + Row.isEngine]! === 0 &&
        (settled || !single) &&
        frictionOf(r, v) > 0
      ) {
        r[v + Row.held] = 1;
        r[v + Row.slide] = 0;
        settled = false;
      }
    } else anyHeld = true;
    if (v === 0) break;
    const j = v - Row.stride;
    const ahead = r[j + Row.right]! - r[j + Row.upper]! * mean;
    const rate = r[j + Row.front]! * ahead - r[j + Row.rear]! * mean;
    const force = r[j + Row.base]! + r[j + Row.slope]! * rate;
    r[j + Row.rate] = rate;
    r[j + Row.force] = force;
    r[j + Row.mean] = ahead;
    mean = ahead;
    const contact = r[j + Row.contact]!;
    const e0 = r[j + Row.extension]!;
    if (contact === Contact.slack) {
      const e1 = e0 + rate * step;
      if (e1 <= r[j + Row.draftPlay]! && -e1 <= r[j + Row.buffPlay]!) continue;
    } else if (contact === Contact.draft) {
      const stiffness = r[j + Row.draftStiffness]!;
      const begin = stiffness * (e0 - r[j + Row.draftPlay]!) + r[j + Row.damping]! * rate;
      if (begin >= 0 && begin + stiffness * rate * step >= 0) continue;
    } else if (contact === Contact.buff) {
      const stiffness = r[j + Row.buffStiffness]!;
      const begin = -stiffness * (e0 + r[j + Row.buffPlay]!) - r[j + Row.damping]! * rate;
      if (begin >= 0 && begin - stiffness * rate * step >= 0) continue;
    }
    const now = averagedForce(chain.laws[j / Row.stride]!, e0, rate, step, averaged).force;
    if (Math.abs(now - force) > FORCE_FLOOR + FORCE_SHARE * Math.abs(now)) settled = false;
  }
  return anyHeld && (settled || !single) ? settleHeld(chain, single) && settled : settled;
}

/** Checks that friction can hold every vehicle that is held at rest; true when it can. */
function settleHeld({ rows: r, count }: ChainRows, single: boolean): boolean {
  let settled = true;
  for (let v = 0; v < count * Row.stride; v += Row.stride) {
    if (r[v + Row.held]! === 0 || r[v + Row.isEngine]! !== 0) continue;
    const v0 = r[v + Row.speed]!;
    const net = chainForce(r, v) + 0.5 * r[v + Row.inertia]! * v0;
    const dry = (r[v + Row.rolling]! + r[v + Row.curve]!) * (v0 === 0 ? r[v + Row.breakaway]! : 1);
    if (Math.abs(net) <= dry + flangeForce(r, v)) continue;
    r[v + Row.held] = 0;
    r[v + Row.slide] = net > 0 ? 1 : -1;
    settled = false;
    if (single) break;
  }
  return settled;
}

/** Finds where every joint stands now: its extension from the free length in space, m. */
export function locateJoints({ rows: r, tables, count }: ChainRows): void {
  for (let j = 0, v = 0; j < count - 1; j++, v += Row.stride) {
    const a = r[v + Row.sigma]!;
    const b = r[v + Row.stride + Row.sigma]!;
    r[v + Row.extension] = a - b - r[v + Row.spacing]! + pivotShift(tables, j, 0.5 * (a + b));
  }
}

/** Coupling forces and grade on the vehicle whose row starts at v, forward positive, N. */
export function chainForce(r: Float64Array, v: number): number {
  const ahead = v > 0 ? r[v - Row.stride + Row.rear]! * r[v - Row.stride + Row.force]! : 0;
  return ahead - r[v + Row.front]! * r[v + Row.force]! - r[v + Row.grade]!;
}

/** Friction of the flange from the coupling forces at both ends, N. */
export function flangeForce(r: Float64Array, v: number): number {
  return r[v + Row.flange]! * Math.abs((v > 0 ? r[v - Row.stride + Row.force]! : 0) + r[v + Row.force]!);
}

/** Level of Coulomb friction of the vehicle whose row starts at v: rolling, curve and flange, N. */
export function frictionOf(r: Float64Array, v: number): number {
  return r[v + Row.rolling]! + r[v + Row.curve]! + flangeForce(r, v);
}

/**
 * Moves every vehicle by the step as solved, keeps the joints' peaks, and books the work of running friction (but the
 * engines') and of the joints' dampers, J. Returns the first joint past its release force, or -1.
 */
export function commit(chain: ChainRows): number {
  const { rows: r, step } = chain;
  const last = (chain.count - 1) * Row.stride;
  let rollingWork = 0;
  let curveWork = 0;
  let flangeWork = 0;
  let damperWork = 0;
  let parting = -1;
  let ahead = 0;
  for (let v = 0; v <= last; v += Row.stride) {
    const force = r[v + Row.force]!;
    const mean = r[v + Row.mean]!;
    const v0 = r[v + Row.speed]!;
    const moved = step * mean;
    r[v + Row.sigma] = r[v + Row.sigma]! + moved;
    if (r[v + Row.isEngine]! !== 0) {
      r[v + Row.speed] = r[v + Row.held]! !== 0 ? r[v + Row.heldSpeed]! : 2 * mean - v0;
    } else if (r[v + Row.held]! !== 0) {
      // Brought to rest within the step by whatever friction it took.
      if (v0 !== 0) rollingWork += (chainForce(r, v) + 0.5 * r[v + Row.inertia]! * v0) * moved;
      r[v + Row.speed] = 0;
    } else {
      const path = r[v + Row.slide]! * moved;
      rollingWork += r[v + Row.viscous]! * mean * moved + r[v + Row.rolling]! * path;
      curveWork += r[v + Row.curve]! * path;
      flangeWork += r[v + Row.flange]! * Math.abs(ahead + force) * path;
      const v1 = 2 * mean - v0;
      r[v + Row.speed] = v1;
      if (v1 === 0) {
        r[v + Row.held] = 1;
        r[v + Row.slide] = 0;
      }
    }
    ahead = force;
    if (force > r[v + Row.draftPeak]!) r[v + Row.draftPeak] = force;
    else if (force < r[v + Row.buffPeak]!) r[v + Row.buffPeak] = force;
    const contact = r[v + Row.contact]!;
    if (contact === Contact.mixed) {
      const law = chain.laws[v / Row.stride]!;
      const e0 = r[v + Row.extension]!;
      const stretch = r[v + Row.rate]! * step;
      damperWork += force * stretch - (storedEnergy(law, e0 + stretch) - storedEnergy(law, e0));
    } else if (contact !== Contact.slack)
      damperWork += r[v + Row.damping]! * r[v + Row.rate]! * r[v + Row.rate]! * step;
    if (force > r[v + Row.release]! && parting < 0) parting = v / Row.stride;
  }
  chain.losses.rolling += rollingWork;
  chain.losses.curve += curveWork;
  chain.losses.flange += flangeWork;
  chain.losses.coupler += damperWork;
  return parting;
}

/**
 * Writes how the train stands into `out` from `at` on: chainages m and speeds m/s of the n vehicles, then forces, draft
 * and buff peaks N and extensions m of the n-1 joints; and begins the peaks anew. Returns what the train asks of its
 * engines to go on `way` (±1) at its speed, N.
 */
export function writeFrame(chain: ChainRows, out: Float64Array, at: number, way: number): number {
  const { rows: r, count: n } = chain;
  locateJoints(chain);
  const joints = at + 2 * n;
  let asked = 0;
  for (let i = 0, v = 0; i < n; i++, v += Row.stride) {
    out[at + i] = chainageAt(chain.tables, r[v + Row.sigma]!);
    out[at + n + i] = r[v + Row.speed]!;
    asked += way * r[v + Row.grade]! + frictionOf(r, v) + r[v + Row.viscous]! * Math.abs(r[v + Row.speed]!);
    if (i === n - 1) break;
    out[joints + i] = r[v + Row.force]!;
    out[joints + (n - 1) + i] = r[v + Row.draftPeak]!;
    out[joints + 2 * (n - 1) + i] = r[v + Row.buffPeak]!;
    out[joints + 3 * (n - 1) + i] = r[v + Row.extension]!;
    r[v + Row.draftPeak] = 0;
    r[v + Row.buffPeak] = 0;
  }
  return asked;
}
