import { type ChainState, Contact } from './chainState.ts';
import { type AveragedForce, averagedForce } from './couplerLaw.ts';
import { VEHICLE_STRIDE } from './routeTables.ts';

/*
 * The two sweeps of a step: forward along the train, gathering what the route asks and eliminating row by row, and back,
 * substituting and checking every branch. Each names the arrays it uses once, so that the loop runs over locals. Joint
 * arrays have one spare place at the end that stays zero: the coupling the last vehicle does not have.
 */

const averaged: AveragedForce = { force: 0, slope: 0 };

/** Newton stops when a mixed joint's force agrees with its linearisation to this share, or this much, N. */
const FORCE_SHARE = 1e-10;
const FORCE_FLOOR = 1e-12;

/**
 * Looks up what the route asks at the step's middle, linearises every joint at its present rate, and eliminates the
 * tridiagonal system for the branches as chosen.
 */
export function sweepForward(state: ChainState): void {
  const { sigma, speed, weight, inertia, dryWeight, wetWeight, gravity, rolling, curve, viscous, flange } = state;
  const { slide, held, heldSpeed, addDiagonal, addRight, upper, right } = state;
  const { extension, rate, contact, base, slope, front, rear, force } = state;
  const { draftPlay, buffPlay, draftStiffness, buffStiffness, damping } = state;
  const { vehicle: rows, vehicleAt, joint: jointRows, jointAt, spacing, origin, node, nodes } = state.tables;
  const { flangeFriction, step } = state;
  const half = 0.5 * step;
  const perNode = 1 / node;
  const lastNode = nodes - 2;
  const last = state.count - 1;
  let c = 0;
  let d = 0;
  let aheadBase = 0;
  let aheadSlope = 0;
  let aheadFront = 1;
  let aheadRear = 1;
  let aheadForce = 0;
  let place = sigma[0]!;
  for (let i = 0; i <= last; i++) {
    const v0 = speed[i]!;
    const x = (place + half * v0 - origin) * perNode;
    let k = x | 0;
    if (k < 0) k = 0;
    else if (k > lastNode) k = lastNode;
    const t = x - k;
    const row = vehicleAt[i]! + k * VEHICLE_STRIDE;
    const w = weight[i]!;
    const sine = rows[row]!;
    const cosine = rows[row + 1]!;
    const bend = rows[row + 2]!;
    const angle = rows[row + 3]!;
    const cos = cosine + (rows[row + 5]! - cosine) * t;
    const g = w * (sine + (rows[row + 4]! - sine) * t);
    const dry = dryWeight[i]! * cos;
    const wet = wetWeight[i]! * cos;
    const bent = w * (bend + (rows[row + 6]! - bend) * t);
    const side = flangeFriction * (angle + (rows[row + 7]! - angle) * t);
    gravity[i] = g;
    rolling[i] = dry;
    curve[i] = bent;
    viscous[i] = wet;
    flange[i] = side;

    let jBase = 0;
    let jSlope = 0;
    let jFront = 1;
    let jRear = 1;
    let jForce = 0;
    if (i < last) {
      const behind = sigma[i + 1]!;
      const y = (0.5 * (place + behind) - origin) * perNode;
      let m = y | 0;
      if (m < 0) m = 0;
      else if (m > lastNode) m = lastNode;
      const at = jointAt[i]! + m;
      const q = jointRows[at]!;
      const dq = jointRows[at + 1]! - q;
      const e0 = place - behind - spacing[i]! + q + dq * (y - m);
      const tilt = 0.5 * dq * perNode;
      jFront = 1 + tilt;
      jRear = 1 - tilt;
      place = behind;
      const r = rate[i]!;
      const damp = damping[i]!;
      const intoDraft = e0 - draftPlay[i]!;
      const intoBuff = -e0 - buffPlay[i]!;
      let branch: number = Contact.mixed;
      if (intoDraft >= 0) {
        const stiff = draftStiffness[i]!;
        const begin = stiff * intoDraft + damp * r;
        if (begin >= 0 && begin + stiff * r * step >= 0) {
          branch = Contact.draft;
          jBase = stiff * intoDraft;
          jSlope = half * stiff + damp;
        }
      } else if (intoBuff >= 0) {
        const stiff = buffStiffness[i]!;
        const begin = stiff * intoBuff - damp * r;
        if (begin >= 0 && begin - stiff * r * step >= 0) {
          branch = Contact.buff;
          jBase = -stiff * intoBuff;
          jSlope = half * stiff + damp;
        }
      } else if (intoDraft + r * step <= 0 && intoBuff - r * step <= 0) branch = Contact.slack;
      if (branch === Contact.mixed) {
        averagedForce(state.laws[i]!, e0, r, step, averaged);
        jSlope = averaged.slope;
        jBase = averaged.force - jSlope * r;
      }
      contact[i] = branch;
      extension[i] = e0;
      base[i] = jBase;
      slope[i] = jSlope;
      front[i] = jFront;
      rear[i] = jRear;
      jForce = force[i]!;
    }

    if (held[i] !== 0) {
      c = 0;
      d = 0.5 * (v0 + heldSpeed[i]!);
    } else {
      const s = slide[i]!;
      const grip = aheadForce + jForce >= 0 ? s * side : -s * side;
      const pull = aheadRear - grip;
      const hold = jFront + grip;
      const pullSlope = pull * aheadSlope;
      const holdSlope = hold * jSlope;
      const lower = -pullSlope * aheadFront;
      const diagonal = inertia[i]! + wet + addDiagonal[i]! + pullSlope * aheadRear + holdSlope * jFront;
      const rhs = inertia[i]! * v0 - g - s * (dry + bent) + addRight[i]! + pull * aheadBase - hold * jBase;
      const pivot = 1 / (diagonal - lower * c);
      d = (rhs - lower * d) * pivot;
      c = -holdSlope * jRear * pivot;
    }
    upper[i] = c;
    right[i] = d;
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
export function sweepBack(state: ChainState, single: boolean): boolean {
  const { speed, slide, held, mean, upper, right, base, slope, front, rear, rate, force, contact, extension } = state;
  const { draftPlay, buffPlay, draftStiffness, buffStiffness, damping, isEngine, step } = state;
  const last = state.count - 1;
  let settled = true;
  let anyHeld = false;
  let v = right[last]!;
  mean[last] = v;
  for (let i = last; ; i--) {
    if (held[i] === 0) {
      if ((2 * v - speed[i]!) * slide[i]! < 0 && isEngine[i] === 0 && (settled || !single) && rubs(state, i)) {
        held[i] = 1;
        slide[i] = 0;
        settled = false;
      }
    } else anyHeld = true;
    const j = i - 1;
    if (j < 0) break;
    const ahead = right[j]! - upper[j]! * v;
    const r = front[j]! * ahead - rear[j]! * v;
    const f = base[j]! + slope[j]! * r;
    rate[j] = r;
    force[j] = f;
    v = ahead;
    mean[j] = v;
    const branch = contact[j]!;
    if (branch === Contact.slack) {
      const e1 = extension[j]! + r * step;
      if (e1 <= draftPlay[j]! && -e1 <= buffPlay[j]!) continue;
    } else if (branch === Contact.draft) {
      const k = draftStiffness[j]!;
      const begin = k * (extension[j]! - draftPlay[j]!) + damping[j]! * r;
      if (begin >= 0 && begin + k * r * step >= 0) continue;
    } else if (branch === Contact.buff) {
      const k = buffStiffness[j]!;
      const begin = -k * (extension[j]! + buffPlay[j]!) - damping[j]! * r;
      if (begin >= 0 && begin - k * r * step >= 0) continue;
    }
    const now = averagedForce(state.laws[j]!, extension[j]!, r, step, averaged).force;
    if (Math.abs(now - f) > FORCE_FLOOR + FORCE_SHARE * Math.abs(now)) settled = false;
  }
  return anyHeld && (settled || !single) ? settleHeld(state, single) && settled : settled;
}

/** Whether vehicle i has any friction to come to rest by; without, passing through zero speed is no change of branch. */
function rubs(state: ChainState, i: number): boolean {
  return state.rolling[i]! + state.curve[i]! + state.flange[i]! * Math.abs(sideForce(state, i)) > 0;
}

/** Checks that friction can hold every vehicle that is held at rest; true when it can. */
function settleHeld(state: ChainState, single: boolean): boolean {
  const { count, speed, inertia, slide, held, isEngine } = state;
  let settled = true;
  for (let i = 0; i < count; i++) {
    if (held[i] === 0 || isEngine[i] !== 0) continue;
    const v0 = speed[i]!;
    const net = chainForce(state, i) + 0.5 * inertia[i]! * v0;
    const dry = (state.rolling[i]! + state.curve[i]!) * (v0 === 0 ? state.breakaway[i]! : 1);
    if (Math.abs(net) <= dry + state.flange[i]! * Math.abs(sideForce(state, i))) continue;
    held[i] = 0;
    slide[i] = net > 0 ? 1 : -1;
    settled = false;
    if (single) break;
  }
  return settled;
}

/** Finds where every joint stands now: its extension from the free length in space, m. */
export function locateJoints(state: ChainState): void {
  const { count, sigma, extension } = state;
  const { joint: rows, jointAt, spacing, origin, node, nodes } = state.tables;
  for (let j = 0; j < count - 1; j++) {
    const a = sigma[j]!;
    const b = sigma[j + 1]!;
    const x = (0.5 * (a + b) - origin) / node;
    const k = Math.min(Math.max(Math.floor(x), 0), nodes - 2);
    const q = rows[jointAt[j]! + k]!;
    extension[j] = a - b - spacing[j]! + q + (rows[jointAt[j]! + k + 1]! - q) * (x - k);
  }
}

/** Coupling forces and gravity on vehicle i, forward positive, N. */
export function chainForce(state: ChainState, i: number): number {
  const ahead = i > 0 ? state.rear[i - 1]! * state.force[i - 1]! : 0;
  return ahead - state.front[i]! * state.force[i]! - state.gravity[i]!;
}

/** Coupling forces at both ends together, which press vehicle i sideways in a curve, N. */
export function sideForce(state: ChainState, i: number): number {
  return (i > 0 ? state.force[i - 1]! : 0) + state.force[i]!;
}
