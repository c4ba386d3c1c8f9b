import type { Train } from '../stock/types.ts';
import { type JointLaw, storedEnergy } from './couplerLaw.ts';
import { type FrameLayout, frameLayout } from './frameLayout.ts';
import { type Address, type Kernel, leaveKernel, takeKernel } from './kernel/load.ts';
import { setDrive, setLaw } from './kernelSettings.ts';
import { type RouteTables, tabulatedHeight } from './routeTables.ts';
import { type Engine, EngineView } from './traction.ts';
import type { ForceModel } from './types.ts';

/**
 * The train as a chain, stepped implicitly.
 *
 * Unknown are the mean speeds V of the step (v¹ = 2V - v⁰). Gravity and rolling drag are taken at the step's middle,
 * coupling forces as averages over the step (couplerLaw.ts), Coulomb friction acts on the end speed v¹ so that a train
 * can come to rest and stay there exactly. The conditions are monotone: one solution exists. It is found by a
 * semi-smooth Newton iteration on a tridiagonal system whose branch choices (in draft, slack, in buff; sliding either
 * way, held; engine driving, held by its worm, slipping) come from the step before and are nearly always right, so
 * the usual step costs one sweep inwards and one back. Derivation, order and limits: docs/mechanics/solver.md. The step
 * itself is in kernel/assembly, compiled to WebAssembly; here a train is laid out in its memory and read from it.
 */
export interface Chain {
  /** Vehicles. */
  readonly count: number;
  readonly tables: RouteTables;
  readonly engines: readonly Engine[];
  /** Rail distance of vehicle i's origin, m, and its speed, m/s. */
  sigma(i: number): number;
  speed(i: number): number;
  /** Rail distance of the first and the last origin, m, and speed of the last, m/s: sooner read than the others. */
  lead(): number;
  tail(): number;
  tailSpeed(): number;
  /** Sets vehicle i in motion, m/s. */
  setSpeed(i: number, speed: number): void;
  /** Force of joint j averaged over the last step, N. */
  force(j: number): number;
  /** Joints that have let go, in order, with the force that did it, N. */
  readonly parted: { readonly joint: number; readonly force: number }[];
  /** Joints that have coupled again, in order, and how many are apart now. */
  readonly recoupled: number[];
  apart: number;
  /** Steps whose branch choice did not settle within the iteration cap; 0 in a sound run. */
  readonly unsettled: number;
  /** Sweeps done, for the record of cost. */
  readonly sweeps: number;
  /** Takes this many steps. */
  advance(steps: number): void;
  /**
   * Takes up to `most` steps and returns how many; fewer when something happens that wants attention: the leading origin
   * reaches rail distance `reach` or the last falls behind `back`, m; wheels slip; an engine has been asked to move and has not for
   * longer than `patience`, s; a joint lets go or has done so.
   */
  advanceWatched(most: number, reach: number, back: number, patience: number): number;
  /** Steps up to now in which some engine was asked to move and did not, its knob being left alone. */
  stuckFor(): number;
  readonly frames: Frames;
  /** Writes a frame to a slot of `frames`, and begins the joints' peaks anew. */
  takeFrame(slot: number, time: number): void;
  /** Says in the frame taken last what every joint's force is, N: for a train that stands stretched or bunched before it has taken a step. */
  setFrameForces(forces: readonly number[]): void;
  /** Kinetic energy incl. rotors, potential energy over node 0, energy stored in joints, J. */
  kinetic(): number;
  potential(): number;
  stored(): number;
  /** Work taken by each loss since the start, J. */
  losses(): Losses;
  /** Takes the train off its ground, for the next; it can be neither stepped nor read any more. */
  leave(): void;
}

/** Room for some frames, one after the other, in the kernel's memory. */
export interface Frames {
  readonly layout: FrameLayout;
  /** Frames it has room for. */
  readonly held: number;
  readonly block: Float64Array;
  /** Of the frame taken last: its slot, whether a joint's contact has changed since the frame before, and whether all stands. */
  readonly slot: number;
  readonly contactNews: boolean;
  readonly standing: boolean;
}

/** J; `motor` is what went in. */
export interface Losses {
  readonly motor: number;
  readonly rolling: number;
  readonly curve: number;
  readonly flange: number;
  readonly coupler: number;
  readonly slip: number;
  readonly holding: number;
}

/** An engine that moves slower than this the way it is asked is getting nowhere, m/s. */
export const CRAWL = 1e-3;

const NEVER = Number.POSITIVE_INFINITY;

/** Bytes of the room for frames, unless one takes more: as much as stays near the processor until it is taken away as a whole. */
const FRAME_ROOM = 65_536;

/** Bits of what the kernel tells of a frame, see kernel/assembly/frames.ts. */
const CONTACT_NEWS = 1;
const ALL_STAND = 2;

/** A kernel with a route's tables in its memory, for one train at a time. */
export interface Ground {
  readonly kernel: Kernel;
  readonly tables: RouteTables;
  readonly vehicleTables: Address;
  readonly jointTables: Address;
  readonly gripTables: Address;
  readonly chainageTable: Address;
}

/** Lays a route's tables in the memory of a kernel of their own. */
export function layGround(tables: RouteTables): Ground {
  const kernel = takeKernel();
  const lay = (values: Float64Array): Address => {
    const at = kernel.room(values.byteLength);
    new Float64Array(kernel.memory.buffer, at, values.length).set(values);
    return at;
  };
  return {
    kernel,
    tables,
    vehicleTables: lay(tables.vehicle),
    jointTables: lay(tables.joint),
    gripTables: lay(tables.grip),
    chainageTable: lay(tables.chainage),
  };
}

/** Takes a route's tables away, when no train is on it any more: its kernel is free for another. */
export function clearGround({ kernel, vehicleTables, jointTables, gripTables, chainageTable }: Ground): void {
  // What was taken last comes free first.
  for (const at of [chainageTable, gripTables, jointTables, vehicleTables]) kernel.giveBack(at);
  leaveKernel(kernel);
}

/** A train at rest at the places given (rail distance of each origin, m), with a law and a release force, N, for each joint. */
export function createChain(
  train: Train,
  ground: Ground,
  laws: readonly JointLaw[],
  release: Float64Array,
  forces: ForceModel,
  step: number,
  startSigma: Float64Array,
): Chain {
  const { vehicles } = train;
  const n = vehicles.length;
  const { kernel, tables, vehicleTables, jointTables, gripTables, chainageTable } = ground;
  const current = [...laws];
  const driven = vehicles.flatMap(({ drive }, i) => (drive ? [{ drive, i }] : []));
  const at = kernel.makeTrain(
    n,
    driven.length,
    step,
    forces.gravity,
    forces.flangeFriction,
    tables.origin,
    1 / tables.node,
    tables.nodes - 2,
    vehicleTables,
    chainageTable,
  );
  vehicles.forEach(({ mass, rolling, drive }, i) => {
    const table = vehicleTables + 8 * tables.vehicleAt[i]!;
    const { coulomb, perSpeed, breakaway } = rolling;
    kernel.setVehicle(at, i, startSigma[i]!, mass, coulomb, perSpeed, breakaway, table, drive !== null);
  });
  laws.forEach((law, j) => {
    kernel.setJoint(at, j, jointTables + 8 * tables.jointAt[j]!, tables.spacing[j]!, release[j]!);
    setLaw(kernel, at, j, law);
  });
  driven.forEach(({ drive, i }, e) => {
    const grip = tables.gripAt[i]!;
    setDrive(kernel, at, e, i, drive, grip < 0 ? 0 : gripTables + 8 * grip);
  });
  const layout = frameLayout(n, driven.length);
  const held = Math.max(Math.floor(FRAME_ROOM / (8 * layout.width)), 1);
  const frameAt = kernel.room(8 * layout.width * held);
  // The kernel's memory grows no more while this train is in it, so that views of it stay good.
  const ends = new Float64Array(kernel.memory.buffer, at, 5);
  const engines = driven.map(({ drive, i }, e) => new EngineView(kernel, at, e, i, drive));
  const frames = {
    layout,
    held,
    block: new Float64Array(kernel.memory.buffer, frameAt, layout.width * held),
    slot: 0,
    contactNews: false,
    standing: true,
  };
  /** Energy lost with joints that let go, J. */
  let snapped = 0;

  /** A joint lets go: it pulls no more, though its faces can still meet. The energy it stored is lost with it. */
  function part(j: number): void {
    const { draftSecond: _, ...rest } = current[j]!;
    snapped += storedEnergy(current[j]!, kernel.extension(at, j));
    current[j] = { ...rest, draftStiffness: 0, draftPlay: NEVER };
    setLaw(kernel, at, j, current[j]);
    chain.parted.push({ joint: j, force: kernel.force(at, j) });
    chain.apart++;
  }

  /** Joints that have let go and can couple again do so where their faces push: draft force begins at zero there, so no work is done. */
  function recouple(): void {
    current.forEach((law, j) => {
      if (law.recouples !== true || law.draftPlay !== NEVER || kernel.force(at, j) >= 0) return;
      current[j] = laws[j]!;
      setLaw(kernel, at, j, laws[j]!);
      chain.recoupled.push(j);
      chain.apart--;
    });
  }

  const chain: Chain = {
    count: n,
    tables,
    engines,
    parted: [],
    recoupled: [],
    apart: 0,
    get unsettled() {
      return kernel.unsettled(at);
    },
    get sweeps() {
      return kernel.sweeps(at);
    },
    sigma: (i) => kernel.sigma(at, i),
    speed: (i) => kernel.speed(at, i),
    lead: () => ends[0]!,
    tail: () => ends[1]!,
    tailSpeed: () => ends[2]!,
    setSpeed: (i, speed) => kernel.setSpeed(at, i, speed),
    force: (j) => kernel.force(at, j),
    advance(steps) {
      for (let left = steps; left > 0; ) left -= chain.advanceWatched(left, NEVER, -NEVER, NEVER);
    },
    advanceWatched(most, reach, back, patience) {
      const taken = kernel.advance(at, chain.apart > 0 ? 1 : most, reach, back, CRAWL, patience);
      if (chain.apart > 0) recouple();
      const parting = ends[3]!;
      if (parting >= 0) part(parting);
      return taken;
    },
    stuckFor: () => ends[4]!,
    frames,
    takeFrame(slot, time) {
      const news = kernel.writeFrame(at, frameAt + 8 * layout.width * slot, time);
      frames.slot = slot;
      frames.contactNews = (news & CONTACT_NEWS) !== 0;
      frames.standing = (news & ALL_STAND) !== 0;
    },
    setFrameForces(forces) {
      const { block, slot } = frames;
      const at = slot * layout.width;
      forces.forEach((force, j) => {
        block[at + layout.force + j] = force;
        block[at + layout.draftPeak + j] = Math.max(force, 0);
        block[at + layout.buffPeak + j] = Math.min(force, 0);
      });
    },
    kinetic() {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += 0.5 * vehicles[i]!.mass * chain.speed(i) * chain.speed(i);
      for (const engine of engines) sum += 0.5 * engine.drive.rotatingMass * engine.rimSpeed * engine.rimSpeed;
      return sum;
    },
    potential() {
      let sum = 0;
      for (let i = 0; i < n; i++)
        sum += vehicles[i]!.mass * forces.gravity * tabulatedHeight(tables, i, chain.sigma(i));
      return sum;
    },
    stored() {
      let sum = 0;
      current.forEach((law, j) => {
        sum += storedEnergy(law, kernel.extension(at, j));
      });
      return sum;
    },
    losses: () => ({
      motor: kernel.loss(at, 0),
      rolling: kernel.loss(at, 1),
      curve: kernel.loss(at, 2),
      flange: kernel.loss(at, 3),
      coupler: kernel.loss(at, 4) + snapped,
      slip: kernel.loss(at, 5),
      holding: kernel.loss(at, 6),
    }),
    leave() {
      kernel.giveBack(frameAt);
      kernel.dropTrain(at);
    },
  };
  return chain;
}
