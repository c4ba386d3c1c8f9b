import type { Vehicle } from '../stock/types.ts';
import type { Address, Kernel } from './kernel/load.ts';

/** What an engine's wheels do, see kernel/assembly/motor.ts. In the kernel's order. */
export const modes = ['drive', 'hold', 'block', 'slip'] as const;
export type Mode = (typeof modes)[number];

/** A locomotive in the chain, as the kernel holds it. */
export interface Engine {
  /** Index of the vehicle. */
  readonly vehicle: number;
  readonly drive: NonNullable<Vehicle['drive']>;
  /** -1..1, written by the driver. */
  setting: number;
  /** m/s at the rim. */
  readonly rimSpeed: number;
  readonly mode: Mode;
  /** Of the vehicle, m/s. */
  readonly speed: number;
  /** Force of rail on engine over the last step, N, and most the wheels could grip, N. */
  readonly railForce: number;
  readonly gripLimit: number;
}

/** A view of an engine in the kernel; the memory must not grow after. The numbers stand as in motor.ts. */
export class EngineView implements Engine {
  readonly vehicle: number;
  readonly drive: Engine['drive'];
  private readonly numbers: Float64Array;
  private readonly modeAt: Int32Array;

  constructor(kernel: Kernel, at: Address, vehicle: number, drive: Engine['drive']) {
    this.vehicle = vehicle;
    this.drive = drive;
    this.numbers = new Float64Array(kernel.memory.buffer, at, 5);
    this.modeAt = new Int32Array(kernel.memory.buffer, at + 40, 1);
  }

  get setting() {
    return this.numbers[0]!;
  }

  set setting(setting) {
    this.numbers[0] = setting;
  }

  get rimSpeed() {
    return this.numbers[1]!;
  }

  get railForce() {
    return this.numbers[2]!;
  }

  get gripLimit() {
    return this.numbers[3]!;
  }

  get speed() {
    return this.numbers[4]!;
  }

  get mode() {
    return modes[this.modeAt[0]!]!;
  }
}
