import { binary } from './binary.ts';

/** Address in the kernel's memory, bytes. */
export type Address = number;

/** What `assembly/kernel.ts` exports: see there for what each does, with shapes and units. */
export interface Kernel {
  readonly memory: { readonly buffer: ArrayBuffer };
  room(bytes: number): Address;
  giveBack(at: Address): void;
  dropTrain(train: Address): void;
  makeTrain(
    count: number,
    engines: number,
    step: number,
    gravity: number,
    flangeFriction: number,
    origin: number,
    perNode: number,
    lastNode: number,
    nowhere: Address,
    chainage: Address,
  ): Address;
  setVehicle(
    train: Address,
    i: number,
    sigma: number,
    mass: number,
    coulomb: number,
    perSpeed: number,
    breakaway: number,
    table: Address,
    isEngine: boolean,
  ): void;
  setJoint(train: Address, j: number, table: Address, spacing: number, release: number): void;
  setLaw(
    train: Address,
    j: number,
    draftStiffness: number,
    draftFrom: number,
    draftSecond: number,
    draftPlay: number,
    buffStiffness: number,
    buffFrom: number,
    buffSecond: number,
    buffPlay: number,
    damping: number,
  ): void;
  setEngine(
    train: Address,
    e: number,
    vehicle: number,
    drivenMass: number,
    adhesion: number,
    slidingAdhesion: number,
    slipScale: number,
    stallForce: number,
    freeSpeed: number,
    rotatingMass: number,
    worm: boolean,
    transfer: number,
    gripTable: Address,
  ): void;
  setSpeed(train: Address, i: number, speed: number): void;
  turnKnob(train: Address, e: number, from: number, to: number, start: number, ramp: number): void;
  holdSpeed(
    train: Address,
    e: number,
    way: number,
    most: number,
    gain: number,
    integralGain: number,
    integral: number,
  ): void;
  cutKnob(train: Address, e: number): void;
  advance(train: Address, most: number, reach: number, back: number, crawl: number, patience: number): number;
  sigma(train: Address, i: number): number;
  speed(train: Address, i: number): number;
  force(train: Address, j: number): number;
  extension(train: Address, j: number): number;
  engine(train: Address, e: number): Address;
  unsettled(train: Address): number;
  sweeps(train: Address): number;
  loss(train: Address, which: number): number;
  writeFrame(train: Address, out: Address, time: number): number;
}

/** The little of these that is used here; the core knows no host, and both Node and every browser have them. */
declare const WebAssembly: {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object) => { readonly exports: unknown };
};
declare const atob: (text: string) => string;

let compiled: object | null = null;

/** Kernels that nothing lies in any more, and how many are kept at the most. */
const idle: Kernel[] = [];
const IDLE_AT_MOST = 4;

/**
 * A kernel with memory of its own. Compiled once, at first use; one that has been left is taken before a new one is made, since an engine makes
 * a way into each anew when it has been called often enough, which takes as long as a tenth of a run.
 */
export function takeKernel(): Kernel {
  const left = idle.pop();
  if (left !== undefined) return left;
  compiled ??= new WebAssembly.Module(Uint8Array.from(atob(binary), (letter) => letter.charCodeAt(0)));
  return new WebAssembly.Instance(compiled).exports as Kernel;
}

/** Leaves a kernel to others, once everything taken of its memory has been given back. */
export function leaveKernel(kernel: Kernel): void {
  if (idle.length < IDLE_AT_MOST) idle.push(kernel);
}
