import type { Train } from '../stock/types.ts';
import { type ChainState, createChainState } from './chainState.ts';
import { commit } from './commit.ts';
import { type JointLaw, storedEnergy } from './couplerLaw.ts';
import { cosineAt, type RouteTables, tabulatedHeight } from './routeTables.ts';
import { chainForce, locateJoints, sideForce, sweepBack, sweepForward } from './sweeps.ts';
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
  readonly state: ChainState;
  readonly engines: readonly Engine[];
  /** Joints that have let go, in order, with the force that did it, N. */
  readonly parted: { readonly joint: number; readonly force: number }[];
  /** Steps whose branch choice did not settle within the iteration cap; 0 in a sound run. */
  unsettled: number;
  /** Sweeps done, for the record of cost. */
  sweeps: number;
  advance(steps: number): void;
  resetPeaks(): void;
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
  const state = createChainState(train, tables, laws, release, forces, step, startSigma);
  const { count, mass, speed, mean, slide, held, heldSpeed, addDiagonal, addRight, force } = state;
  const balance: Balance = { v0: 0, v1: 0, mean: 0, others: 0, inertial: 0, friction: 0, breakaway: 1 };

  /** Writes what an engine asks for into its row of the system. */
  function enterRow(engine: Engine): void {
    const i = engine.vehicle;
    const resting = !engine.fixed && engine.slide === 0;
    held[i] = engine.fixed || resting ? 1 : 0;
    heldSpeed[i] = engine.fixed ? engine.fixedSpeed : 0;
    slide[i] = engine.slide;
    addDiagonal[i] = engine.rowDiagonal;
    addRight[i] = engine.rowRight;
  }

  /** An engine's own balance over the step as solved, in a scratch object. */
  function balanceOf(engine: Engine): Balance {
    const i = engine.vehicle;
    const V = mean[i]!;
    balance.v0 = speed[i]!;
    balance.v1 = held[i] !== 0 ? heldSpeed[i]! : 2 * V - balance.v0;
    balance.mean = V;
    balance.others = chainForce(state, i) - state.viscous[i]! * V;
    balance.inertial = (mass[i]! * (balance.v1 - balance.v0)) / step;
    balance.friction = state.rolling[i]! + state.curve[i]! + state.flange[i]! * Math.abs(sideForce(state, i));
    balance.breakaway = state.breakaway[i]!;
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
    const i = engine.vehicle;
    const { friction, mean: V } = balanceOf(engine);
    const acted = engine.book(balance, state.losses, step);
    const share = friction > 0 ? (acted / friction) * Math.abs(V) * step : 0;
    state.losses.rolling += state.viscous[i]! * V * V * step + share * state.rolling[i]!;
    state.losses.curve += share * state.curve[i]!;
    state.losses.flange += share * (friction - state.rolling[i]! - state.curve[i]!);
  }

  function stepOnce(): void {
    for (const engine of engines) {
      const i = engine.vehicle;
      const pull = force[i]! - (i > 0 ? force[i - 1]! : 0);
      engine.begin(speed[i]!, pull, forces.gravity * cosineAt(tables, i, state.sigma[i]!), step);
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
    const law = state.laws[j]!;
    state.losses.coupler += storedEnergy(law, state.extension[j]! + state.rate[j]! * step);
    state.laws[j] = { ...law, draftStiffness: 0, draftPlay: Number.POSITIVE_INFINITY };
    state.draftStiffness[j] = 0;
    state.draftPlay[j] = Number.POSITIVE_INFINITY;
    chain.parted.push({ joint: j, force: force[j]! });
  }

  const chain: Chain = {
    state,
    engines,
    parted: [],
    unsettled: 0,
    sweeps: 0,
    advance(steps) {
      for (let k = 0; k < steps; k++) stepOnce();
    },
    resetPeaks() {
      state.draftPeak.fill(0);
      state.buffPeak.fill(0);
    },
    kinetic() {
      let sum = 0;
      for (let i = 0; i < count; i++) sum += 0.5 * mass[i]! * speed[i]! * speed[i]!;
      for (const engine of engines) sum += 0.5 * engine.drive.rotatingMass * engine.rimSpeed * engine.rimSpeed;
      return sum;
    },
    potential() {
      let sum = 0;
      for (let i = 0; i < count; i++) sum += state.weight[i]! * tabulatedHeight(tables, i, state.sigma[i]!);
      return sum;
    },
    stored() {
      locateJoints(state);
      let sum = 0;
      for (let j = 0; j < count - 1; j++) sum += storedEnergy(state.laws[j]!, state.extension[j]!);
      return sum;
    },
  };
  return chain;
}
