import {
  ADD_DIAGONAL,
  ADD_RIGHT,
  BASE,
  BREAKAWAY,
  BUFF_PLAY,
  BUFF_STIFFNESS,
  type ChainRows,
  CONTACT,
  CURVE,
  DAMPING,
  DRAFT_PLAY,
  DRAFT_STIFFNESS,
  DRY,
  EXTENSION,
  FLANGE,
  FORCE,
  FRONT,
  GRADE,
  HELD,
  HELD_SPEED,
  IN_BUFF,
  IN_DRAFT,
  INERTIA,
  IS_ENGINE,
  JOINT_TABLE,
  MEAN,
  MIXED,
  RATE,
  REAR,
  RIGHT,
  ROLLING,
  SIGMA,
  SLACK,
  SLIDE,
  SLOPE,
  SPACING,
  SPEED,
  STRIDE,
  UPPER,
  VEHICLE_TABLE,
  VISCOUS,
  WEIGHT,
  WET,
} from './chainRows.ts';
import { type AveragedForce, averagedForce } from './couplerLaw.ts';
import { VEHICLE_STRIDE } from './routeTables.ts';

/*
 * The two sweeps of a step: forward along the train, gathering what the route asks and eliminating row by row, and back,
 * substituting and checking every branch.
 */

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
  const last = (chain.count - 1) * STRIDE;
  let c = 0;
  let d = 0;
  let aheadBase = 0;
  let aheadSlope = 0;
  let aheadFront = 1;
  let aheadRear = 1;
  let aheadForce = 0;
  let place = r[SIGMA]!;
  for (let v = 0; v <= last; v += STRIDE) {
    const v0 = r[v + SPEED]!;
    const x = (place + half * v0 - origin) * perNode;
    let k = x | 0;
    if (k < 0) k = 0;
    else if (k > lastNode) k = lastNode;
    const t = x - k;
    const at = (r[v + VEHICLE_TABLE]! | 0) + k * VEHICLE_STRIDE;
    const w = r[v + WEIGHT]!;
    const sine = vehicle[at]!;
    const cosine = vehicle[at + 1]!;
    const bend = vehicle[at + 2]!;
    const angle = vehicle[at + 3]!;
    const cos = cosine + (vehicle[at + 5]! - cosine) * t;
    const grade = w * (sine + (vehicle[at + 4]! - sine) * t);
    const rolling = r[v + DRY]! * cos;
    const viscous = r[v + WET]! * cos;
    const curve = w * (bend + (vehicle[at + 6]! - bend) * t);
    const flange = flangeFriction * (angle + (vehicle[at + 7]! - angle) * t);
    r[v + GRADE] = grade;
    r[v + ROLLING] = rolling;
    r[v + CURVE] = curve;
    r[v + VISCOUS] = viscous;
    r[v + FLANGE] = flange;

    let jBase = 0;
    let jSlope = 0;
    let jFront = 1;
    let jRear = 1;
    let jForce = 0;
    if (v < last) {
      const behind = r[v + STRIDE + SIGMA]!;
      const y = (0.5 * (place + behind) - origin) * perNode;
      let m = y | 0;
      if (m < 0) m = 0;
      else if (m > lastNode) m = lastNode;
      const entry = (r[v + JOINT_TABLE]! | 0) + m;
      const q = joint[entry]!;
      const dq = joint[entry + 1]! - q;
      const e0 = place - behind - r[v + SPACING]! + q + dq * (y - m);
      const tilt = 0.5 * dq * perNode;
      jFront = 1 + tilt;
      jRear = 1 - tilt;
      place = behind;
      const rate = r[v + RATE]!;
      const damping = r[v + DAMPING]!;
      const intoDraft = e0 - r[v + DRAFT_PLAY]!;
      const intoBuff = -e0 - r[v + BUFF_PLAY]!;
      let contact = MIXED;
      if (intoDraft >= 0) {
        const stiffness = r[v + DRAFT_STIFFNESS]!;
        const begin = stiffness * intoDraft + damping * rate;
        if (begin >= 0 && begin + stiffness * rate * step >= 0) {
          contact = IN_DRAFT;
          jBase = stiffness * intoDraft;
          jSlope = half * stiffness + damping;
        }
      } else if (intoBuff >= 0) {
        const stiffness = r[v + BUFF_STIFFNESS]!;
        const begin = stiffness * intoBuff - damping * rate;
        if (begin >= 0 && begin - stiffness * rate * step >= 0) {
          contact = IN_BUFF;
          jBase = -stiffness * intoBuff;
          jSlope = half * stiffness + damping;
        }
      } else if (intoDraft + rate * step <= 0 && intoBuff - rate * step <= 0) contact = SLACK;
      if (contact === MIXED) {
        averagedForce(chain.laws[v / STRIDE]!, e0, rate, step, averaged);
        jSlope = averaged.slope;
        jBase = averaged.force - jSlope * rate;
      }
      r[v + CONTACT] = contact;
      r[v + EXTENSION] = e0;
      r[v + BASE] = jBase;
      r[v + SLOPE] = jSlope;
      r[v + FRONT] = jFront;
      r[v + REAR] = jRear;
      jForce = r[v + FORCE]!;
    }

    if (r[v + HELD]! !== 0) {
      c = 0;
      d = 0.5 * (v0 + r[v + HELD_SPEED]!);
    } else {
      const s = r[v + SLIDE]!;
      const inertia = r[v + INERTIA]!;
      const grip = aheadForce + jForce >= 0 ? s * flange : -s * flange;
      const pull = aheadRear - grip;
      const hold = jFront + grip;
      const pullSlope = pull * aheadSlope;
      const holdSlope = hold * jSlope;
      const lower = -pullSlope * aheadFront;
      const diagonal = inertia + viscous + r[v + ADD_DIAGONAL]! + pullSlope * aheadRear + holdSlope * jFront;
      const right = inertia * v0 - grade - s * (rolling + curve) + r[v + ADD_RIGHT]! + pull * aheadBase - hold * jBase;
      const pivot = 1 / (diagonal - lower * c);
      d = (right - lower * d) * pivot;
      c = -holdSlope * jRear * pivot;
    }
    r[v + UPPER] = c;
    r[v + RIGHT] = d;
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
  const last = (chain.count - 1) * STRIDE;
  let settled = true;
  let anyHeld = false;
  let mean = r[last + RIGHT]!;
  r[last + MEAN] = mean;
  for (let v = last; ; v -= STRIDE) {
    if (r[v + HELD]! === 0) {
      if (
        (2 * mean - r[v + SPEED]!) * r[v + SLIDE]! < 0 &&
        r[v + IS_ENGINE]! === 0 &&
        (settled || !single) &&
        frictionOf(r, v) > 0
      ) {
        r[v + HELD] = 1;
        r[v + SLIDE] = 0;
        settled = false;
      }
    } else anyHeld = true;
    if (v === 0) break;
    const j = v - STRIDE;
    const ahead = r[j + RIGHT]! - r[j + UPPER]! * mean;
    const rate = r[j + FRONT]! * ahead - r[j + REAR]! * mean;
    const force = r[j + BASE]! + r[j + SLOPE]! * rate;
    r[j + RATE] = rate;
    r[j + FORCE] = force;
    r[j + MEAN] = ahead;
    mean = ahead;
    const contact = r[j + CONTACT]!;
    const e0 = r[j + EXTENSION]!;
    if (contact === SLACK) {
      const e1 = e0 + rate * step;
      if (e1 <= r[j + DRAFT_PLAY]! && -e1 <= r[j + BUFF_PLAY]!) continue;
    } else if (contact === IN_DRAFT) {
      const stiffness = r[j + DRAFT_STIFFNESS]!;
      const begin = stiffness * (e0 - r[j + DRAFT_PLAY]!) + r[j + DAMPING]! * rate;
      if (begin >= 0 && begin + stiffness * rate * step >= 0) continue;
    } else if (contact === IN_BUFF) {
      const stiffness = r[j + BUFF_STIFFNESS]!;
      const begin = -stiffness * (e0 + r[j + BUFF_PLAY]!) - r[j + DAMPING]! * rate;
      if (begin >= 0 && begin - stiffness * rate * step >= 0) continue;
    }
    const now = averagedForce(chain.laws[j / STRIDE]!, e0, rate, step, averaged).force;
    if (Math.abs(now - force) > FORCE_FLOOR + FORCE_SHARE * Math.abs(now)) settled = false;
  }
  return anyHeld && (settled || !single) ? settleHeld(chain, single) && settled : settled;
}

/** Checks that friction can hold every vehicle that is held at rest; true when it can. */
function settleHeld({ rows: r, count }: ChainRows, single: boolean): boolean {
  let settled = true;
  for (let v = 0; v < count * STRIDE; v += STRIDE) {
    if (r[v + HELD]! === 0 || r[v + IS_ENGINE]! !== 0) continue;
    const v0 = r[v + SPEED]!;
    const net = chainForce(r, v) + 0.5 * r[v + INERTIA]! * v0;
    const dry = (r[v + ROLLING]! + r[v + CURVE]!) * (v0 === 0 ? r[v + BREAKAWAY]! : 1);
    if (Math.abs(net) <= dry + flangeForce(r, v)) continue;
    r[v + HELD] = 0;
    r[v + SLIDE] = net > 0 ? 1 : -1;
    settled = false;
    if (single) break;
  }
  return settled;
}

/** Finds where every joint stands now: its extension from the free length in space, m. */
export function locateJoints({ rows: r, tables, count }: ChainRows): void {
  const { joint, origin, node, nodes } = tables;
  for (let v = 0; v < (count - 1) * STRIDE; v += STRIDE) {
    const a = r[v + SIGMA]!;
    const b = r[v + STRIDE + SIGMA]!;
    const x = (0.5 * (a + b) - origin) / node;
    const k = Math.min(Math.max(Math.floor(x), 0), nodes - 2);
    const entry = r[v + JOINT_TABLE]! + k;
    const q = joint[entry]!;
    r[v + EXTENSION] = a - b - r[v + SPACING]! + q + (joint[entry + 1]! - q) * (x - k);
  }
}

/** Coupling forces and grade on the vehicle whose row starts at v, forward positive, N. */
export function chainForce(r: Float64Array, v: number): number {
  const ahead = v > 0 ? r[v - STRIDE + REAR]! * r[v - STRIDE + FORCE]! : 0;
  return ahead - r[v + FRONT]! * r[v + FORCE]! - r[v + GRADE]!;
}

/** Friction of the flange from the coupling forces at both ends, N. */
export function flangeForce(r: Float64Array, v: number): number {
  return r[v + FLANGE]! * Math.abs((v > 0 ? r[v - STRIDE + FORCE]! : 0) + r[v + FORCE]!);
}

/** Level of Coulomb friction of the vehicle whose row starts at v: rolling, curve and flange, N. */
export function frictionOf(r: Float64Array, v: number): number {
  return r[v + ROLLING]! + r[v + CURVE]! + flangeForce(r, v);
}
