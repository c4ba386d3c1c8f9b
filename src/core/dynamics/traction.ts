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

/** A view of the engine at an address; the kernel's memory must not grow after. The numbers stand as in motor.ts. */
export function viewEngine(kernel: Kernel, at: Address, vehicle: number, drive: Engine['drive']): Engine {
  const numbers = new Float64Array(kernel.memory.buffer, at, 5);
  const mode = new Int32Array(kernel.memory.buffer, at + 40, 1);
  return {
    vehicle,
    drive,
    get setting() {
      return numbers[0]!;
    },
    set setting(setting) {
      numbers[0] = setting;
    },
    get rimSpeed() {
      return numbers[1]!;
    },
    get railForce() {
      return numbers[2]!;
    },
    get gripLimit() {
      return numbers[3]!;
    },
    get speed() {
      return numbers[4]!;
    },
    get mode() {
      return modes[mode[0]!]!;
    },
  };
}
