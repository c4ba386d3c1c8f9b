import type { Train } from '../stock/types.ts';
import {
  type ChainRows,
  chainForce,
  commit,
  createChainRows,
  frictionOf,
  locateJoints,
  Row,
  sweepBack,
  sweepForward,
} from './chainRows.ts';
import { type JointLaw, storedEnergy } from './couplerLaw.ts';
import { cosineAt, type RouteTables, tabulatedHeight } from './routeTables.ts';
import type { Balance, Engine } from './traction.ts';
import type { ForceModel } from './types.ts';

/**
 * The train as a chain, stepped implicitly.
 *
 * Unknown are the mean speeds V of the step (v¹ = 2V - v⁰). Gravity and rolling drag are taken at the step's middle,
 * coupling forces as averages over the step (couplerLaw.ts), Coulomb friction acts on the end speed v¹ so that a train
 * can come to rest and stay there exactly. The conditions are monotone: one solution exists. It is found by a
 * semi-smooth Newton iteration on a tridiagonal system whose branch choices (in draft, slack, in buff; sliding either
 * way, held; engine driving, held by its worm, slipping) come from the step before and are nearly always right, so
 * the usual step costs one sweep forward and one back. Derivation, order and limits: docs/mechanics/solver.md.
 */
export interface Chain {
  readonly state: ChainRows;
  /** Rail distance of vehicle i's origin, m, and its speed, m/s. */
  sigma(i: number): number;
  speed(i: number): number;
  /** Force of joint j averaged over the last step, N. */
  force(j: number): number;
  readonly engines: readonly Engine[];
  /** Joints that have let go, in order, with the force that did it, N. */
  readonly parted: { readonly joint: number; readonly force: number }[];
  /** Steps whose branch choice did not settle within the iteration cap; 0 in a sound run. */
  unsettled: number;
  /** Sweeps done, for the record of cost. */
  sweeps: number;
  advance(steps: number): void;
  /** Kinetic energy incl. rotors, potential energy over node 0, energy stored in joints, J. */
  kinetic(): number;
  potential(): number;
  stored(): number;
}

/** Sweeps after which branch choices change one at a time, and after which the step is taken as it is. */
const CAREFUL_SWEEPS = 12;
const MAX_SWEEPS = 80;

export function createChain(
  train: Train,
  tables: RouteTables,
  laws: readonly JointLaw[],
  release: Float64Array,
  engines: readonly Engine[],
  forces: ForceModel,
  step: number,
  startSigma: Float64Array,
): Chain {
  const state = createChainRows(train, tables, laws, release, forces, step, startSigma);
  const { count, rows: r } = state;
  const end = count * Row.stride;
  const balance: Balance = { v0: 0, v1: 0, mean: 0, others: 0, inertial: 0, friction: 0, breakaway: 1 };

  /** Writes what an engine asks for into its row of the system. */
  function enterRow(engine: Engine): void {
    const v = engine.vehicle * Row.stride;
    const resting = !engine.fixed && engine.slide === 0;
    r[v + Row.held] = engine.fixed || resting ? 1 : 0;
    r[v + Row.heldSpeed] = engine.fixed ? engine.fixedSpeed : 0;
    r[v + Row.slide] = engine.slide;
    r[v + Row.addDiagonal] = engine.rowDiagonal;
    r[v + Row.addRight] = engine.rowRight;
  }

  /** An engine's own balance over the step as solved, in a scratch object. */
  function balanceOf(engine: Engine): Balance {
    const v = engine.vehicle * Row.stride;
    const mean = r[v + Row.mean]!;
    balance.v0 = r[v + Row.speed]!;
    balance.v1 = r[v + Row.held]! !== 0 ? r[v + Row.heldSpeed]! : 2 * mean - balance.v0;
    balance.mean = mean;
    balance.others = chainForce(r, v) - r[v + Row.viscous]! * mean;
    balance.inertial = 0.5 * r[v + Row.inertia]! * (balance.v1 - balance.v0);
    balance.friction = frictionOf(r, v);
    balance.breakaway = r[v + Row.breakaway]!;
    return balance;
  }

  function settleEngines(): boolean {
    let settled = true;
    for (const engine of engines) {
      if (!engine.settle(balanceOf(engine), step)) continue;
      enterRow(engine);
      settled = false;
    }
    return settled;
  }

  /** Books an engine's work; its running friction is shared out by what makes it up. */
  function bookEngine(engine: Engine): void {
    const v = engine.vehicle * Row.stride;
    const { friction, mean } = balanceOf(engine);
    const acted = engine.book(balance, state.losses, step);
    const share = friction > 0 ? (acted / friction) * Math.abs(mean) * step : 0;
    state.losses.rolling += r[v + Row.viscous]! * mean * mean * step + share * r[v + Row.rolling]!;
    state.losses.curve += share * r[v + Row.curve]!;
    state.losses.flange += share * (friction - r[v + Row.rolling]! - r[v + Row.curve]!);
  }

  function stepOnce(): void {
    for (const engine of engines) {
      const v = engine.vehicle * Row.stride;
      const pull = r[v + Row.force]! - (v > 0 ? r[v - Row.stride + Row.force]! : 0);
      engine.begin(r[v + Row.speed]!, pull, forces.gravity * cosineAt(tables, engine.vehicle, r[v + Row.sigma]!), step);
      enterRow(engine);
    }
    for (let sweep = 1; ; sweep++) {
      sweepForward(state);
      const careful = sweep > CAREFUL_SWEEPS;
      const settled = sweepBack(state, careful);
      const driven = (settled || !careful) && settleEngines();
      chain.sweeps++;
      if (settled && driven) break;
      if (sweep === MAX_SWEEPS) {
        chain.unsettled++;
        break;
      }
    }
    for (const engine of engines) bookEngine(engine);
    const parting = commit(state);
    if (parting >= 0) part(parting);
  }

  /** A joint lets go: it pulls no more, though its faces can still meet. The energy it stored is lost with it. */
  function part(j: number): void {
    const v = j * Row.stride;
    const law = state.laws[j]!;
    state.losses.coupler += storedEnergy(law, r[v + Row.extension]! + r[v + Row.rate]! * step);
    state.laws[j] = { ...law, draftStiffness: 0, draftPlay: Number.POSITIVE_INFINITY };
    r[v + Row.draftStiffness] = 0;
    r[v + Row.draftPlay] = Number.POSITIVE_INFINITY;
    chain.parted.push({ joint: j, force: r[v + Row.force]! });
  }

  const chain: Chain = {
    state,
    engines,
    parted: [],
    unsettled: 0,
    sweeps: 0,
    sigma: (i) => r[i * Row.stride + Row.sigma]!,
    speed: (i) => r[i * Row.stride + Row.speed]!,
    force: (j) => r[j * Row.stride + Row.force]!,
    advance(steps) {
      for (let k = 0; k < steps; k++) stepOnce();
    },
    kinetic() {
      let sum = 0;
      for (let v = 0; v < end; v += Row.stride)
        sum += 0.25 * step * r[v + Row.inertia]! * r[v + Row.speed]! * r[v + Row.speed]!;
      for (const engine of engines) sum += 0.5 * engine.drive.rotatingMass * engine.rimSpeed * engine.rimSpeed;
      return sum;
    },
    potential() {
      let sum = 0;
      for (let v = 0; v < end; v += Row.stride)
        sum += r[v + Row.weight]! * tabulatedHeight(tables, v / Row.stride, r[v + Row.sigma]!);
      return sum;
    },
    stored() {
      locateJoints(state);
      let sum = 0;
      state.laws.forEach((law, j) => {
        sum += storedEnergy(law, r[j * Row.stride + Row.extension]!);
      });
      return sum;
    },
  };
  return chain;
}
