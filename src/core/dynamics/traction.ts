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
  /** -1..1 */
  setting: number;
  /** Turns the setting from one to another, from `start` on for `ramp`, s. */
  turn(from: number, to: number, start: number, ramp: number): void;
  /** After `turn` between two speeds, m/s: has a controller hold them; see `knobs.ts` in the kernel. */
  hold(way: number, most: number, gain: number, integralGain: number, integral: number): void;
  /** Sets the setting to 0 at once. */
  cut(): void;
  /** m/s at the rim. */
  readonly rimSpeed: number;
  readonly mode: Mode;
  /** Of the vehicle, m/s. */
  readonly speed: number;
  /** Force of rail on engine over the last step, N, and most the wheels could grip, N. */
  readonly railForce: number;
  readonly gripLimit: number;
}

/** A view of engine e of a train in the kernel; the memory must not grow after. The numbers stand as in motor.ts. */
export class EngineView implements Engine {
  readonly vehicle: number;
  readonly drive: Engine['drive'];
  readonly turn: Engine['turn'];
  readonly hold: Engine['hold'];
  readonly cut: Engine['cut'];
  private readonly numbers: Float64Array;
  private readonly modeAt: Int32Array;

  constructor(kernel: Kernel, train: Address, e: number, vehicle: number, drive: Engine['drive']) {
    const at = kernel.engine(train, e);
    this.vehicle = vehicle;
    this.drive = drive;
    this.turn = (from, to, start, ramp) => kernel.turnKnob(train, e, from, to, start, ramp);
    this.hold = (way, most, gain, integralGain, integral) =>
      kernel.holdSpeed(train, e, way, most, gain, integralGain, integral);
    this.cut = () => kernel.cutKnob(train, e);
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
