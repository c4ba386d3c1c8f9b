import { type ChainState, Contact } from './chainState.ts';
import { type AveragedForce, averagedForce } from './couplerLaw.ts';
import { VEHICLE_STRIDE } from './routeTables.ts';

/*
 * The hot loops of a step. Each names the arrays it uses once at its top, so that the loops run over locals.
 * Joint arrays have one spare place at the end that stays zero: the coupling the last vehicle does not have.
 */

const averaged: AveragedForce = { force: 0, slope: 0 };

/** Newton stops when a mixed joint's force agrees with its linearisation to this share, or this much, N. */
const FORCE_SHARE = 1e-10;
const FORCE_FLOOR = 1e-12;

/** Looks up what the route asks of every vehicle at the step's middle. */
export function gatherVehicles(state: ChainState): void {
  const { count, sigma, speed, weight, coulomb, perSpeed, gravity, rolling, curve, viscous, flange, cosine } = state;
  const { vehicle: rows, vehicleAt, origin, node, nodes } = state.tables;
  const { flangeFriction } = state;
  const half = 0.5 * state.step;
  const perNode = 1 / node;
  const last = nodes - 2;
  for (let i = 0; i < count; i++) {
    const x = (sigma[i]! + half * speed[i]! - origin) * perNode;
    let k = x | 0;
    if (k < 0) k = 0;
    else if (k > last) k = last;
    const t = x - k;
    const row = vehicleAt[i]! + k * VEHICLE_STRIDE;
    const w = weight[i]!;
    const sine = rows[row]!;
    const cos = rows[row + 1]!;
    const bend = rows[row + 2]!;
    const angle = rows[row + 3]!;
    const c = cos + (rows[row + 5]! - cos) * t;
    cosine[i] = c;
    gravity[i] = w * (sine + (rows[row + 4]! - sine) * t);
    rolling[i] = w * c * coulomb[i]!;
    viscous[i] = w * c * perSpeed[i]!;
    curve[i] = w * (bend + (rows[row + 6]! - bend) * t);
    flange[i] = flangeFriction * (angle + (rows[row + 7]! - angle) * t);
  }
}

/** Finds where every joint stands: its extension from the free length in space, and how the rate follows the speeds. */
export function gatherJoints(state: ChainState): void {
  const { count, sigma, extension, front, rear } = state;
  const { joint: rows, jointAt, spacing, origin, node, nodes } = state.tables;
  const perNode = 1 / node;
  const last = nodes - 2;
  for (let j = 0; j < count - 1; j++) {
    const a = sigma[j]!;
    const b = sigma[j + 1]!;
    const x = (0.5 * (a + b) - origin) * perNode;
    let k = x | 0;
    if (k < 0) k = 0;
    else if (k > last) k = last;
    const at = jointAt[j]! + k;
    const q = rows[at]!;
    const dq = rows[at + 1]! - q;
    extension[j] = a - b - spacing[j]! + q + dq * (x - k);
    const tilt = 0.5 * dq * perNode;
    front[j] = 1 + tilt;
    rear[j] = 1 - tilt;
  }
}

/** Chooses every joint's branch at its present rate and writes its force there as base + slope·rate. */
export function linearise(state: ChainState): void {
  const { count, extension, rate, draftPlay, buffPlay, draftStiffness, buffStiffness, damping } = state;
  const { contact, base, slope, step } = state;
  for (let j = 0; j < count - 1; j++) {
    const e0 = extension[j]!;
    const r = rate[j]!;
    const e1 = e0 + r * step;
    const intoDraft = e0 - draftPlay[j]!;
    const intoBuff = -e0 - buffPlay[j]!;
    const c = damping[j]!;
    if (intoDraft >= 0) {
      const k = draftStiffness[j]!;
      const start = k * intoDraft + c * r;
      if (start >= 0 && start + k * r * step >= 0) {
        contact[j] = Contact.draft;
        base[j] = k * intoDraft;
        slope[j] = 0.5 * step * k + c;
        continue;
      }
    } else if (intoBuff >= 0) {
      const k = buffStiffness[j]!;
      const start = k * intoBuff - c * r;
      if (start >= 0 && start - k * r * step >= 0) {
        contact[j] = Contact.buff;
        base[j] = -k * intoBuff;
        slope[j] = 0.5 * step * k + c;
        continue;
      }
    } else if (e1 <= draftPlay[j]! && -e1 <= buffPlay[j]!) {
      contact[j] = Contact.slack;
      base[j] = 0;
      slope[j] = 0;
      continue;
    }
    contact[j] = Contact.mixed;
    averagedForce(state.laws[j]!, e0, r, step, averaged);
    base[j] = averaged.force - averaged.slope * r;
    slope[j] = averaged.slope;
  }
}

/** One sweep forward and one back: the mean speeds, rates and forces for the branches as chosen. */
export function solve(state: ChainState): void {
  const { count, mass, speed, gravity, rolling, curve, viscous, flange, slide, held, heldSpeed } = state;
  const { addDiagonal, addRight, base, slope, front, rear, rate, force, mean, upper, right } = state;
  const inertiaPerMass = 2 / state.step;
  let c = 0;
  let d = 0;
  let aheadBase = 0;
  let aheadSlope = 0;
  let aheadFront = 1;
  let aheadRear = 1;
  let aheadForce = 0;
  for (let i = 0; i < count; i++) {
    const jBase = base[i]!;
    const jSlope = slope[i]!;
    const jFront = front[i]!;
    const jRear = rear[i]!;
    const jForce = force[i]!;
    const v0 = speed[i]!;
    if (held[i] !== 0) {
      c = 0;
      d = 0.5 * (v0 + heldSpeed[i]!);
    } else {
      const s = slide[i]!;
      const inertia = mass[i]! * inertiaPerMass;
      const grip = aheadForce + jForce >= 0 ? s * flange[i]! : -s * flange[i]!;
      const pull = aheadRear - grip;
      const hold = jFront + grip;
      const pullSlope = pull * aheadSlope;
      const holdSlope = hold * jSlope;
      const lower = -pullSlope * aheadFront;
      const diagonal = inertia + viscous[i]! + addDiagonal[i]! + pullSlope * aheadRear + holdSlope * jFront;
      const rhs =
        inertia * v0 - gravity[i]! - s * (rolling[i]! + curve[i]!) + addRight[i]! + pull * aheadBase - hold * jBase;
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
  let v = d;
  mean[count - 1] = v;
  for (let i = count - 2; i >= 0; i--) {
    const ahead = right[i]! - upper[i]! * v;
    const r = front[i]! * ahead - rear[i]! * v;
    rate[i] = r;
    force[i] = base[i]! + slope[i]! * r;
    v = ahead;
    mean[i] = v;
  }
}

/** Checks the joints' branches against the solution and linearises them anew; true when all had been right. */
export function settleJoints(state: ChainState): boolean {
  const { count, extension, rate, draftPlay, buffPlay, draftStiffness, buffStiffness, damping, contact, step } = state;
  let settled = true;
  for (let j = 0; j < count - 1; j++) {
    const e0 = extension[j]!;
    const r = rate[j]!;
    const branch = contact[j]!;
    if (branch === Contact.draft) {
      const k = draftStiffness[j]!;
      const start = k * (e0 - draftPlay[j]!) + damping[j]! * r;
      if (start >= 0 && start + k * r * step >= 0) continue;
    } else if (branch === Contact.buff) {
      const k = buffStiffness[j]!;
      const start = k * (-e0 - buffPlay[j]!) - damping[j]! * r;
      if (start >= 0 && start - k * r * step >= 0) continue;
    } else if (branch === Contact.slack) {
      const e1 = e0 + r * step;
      if (e1 <= draftPlay[j]! && -e1 <= buffPlay[j]!) continue;
    }
    const now = averagedForce(state.laws[j]!, e0, r, step, averaged).force;
    if (Math.abs(now - state.force[j]!) > FORCE_FLOOR + FORCE_SHARE * Math.abs(now)) settled = false;
  }
  return settled;
}

/** Checks sliding and rest of every vehicle but the engines; true when all had been right. `single` changes at most one. */
export function settleVehicles(state: ChainState, single: boolean): boolean {
  const { count, mass, speed, mean, slide, held, isEngine } = state;
  let settled = true;
  for (let i = 0; i < count; i++) {
    if (isEngine[i] !== 0) continue;
    const v0 = speed[i]!;
    if (held[i] === 0) {
      if ((2 * mean[i]! - v0) * slide[i]! >= 0) continue;
      held[i] = 1;
      slide[i] = 0;
    } else {
      const net = chainForce(state, i) - (mass[i]! * -v0) / state.step;
      const dry = (state.rolling[i]! + state.curve[i]!) * (v0 === 0 ? state.breakaway[i]! : 1);
      if (Math.abs(net) <= dry + state.flange[i]! * Math.abs(sideForce(state, i))) continue;
      held[i] = 0;
      slide[i] = net > 0 ? 1 : -1;
    }
    settled = false;
    if (single) return false;
  }
  return settled;
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
