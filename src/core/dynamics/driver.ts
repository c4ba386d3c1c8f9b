import { railAt, type Track } from '../track/index.ts';
import type { Engine } from './traction.ts';
import type { Script } from './types.ts';

/** The driver's hand: turns the script's orders into settings, one order after the other. */
export interface Driver {
  /** Sets every engine's setting for the step that starts at `time` with the leading end at rail distance `leading`. */
  drive(time: number, leading: number): void;
  /** Whether a setting is still being turned to its new value. */
  readonly turning: boolean;
}

export function createDriver(script: Script, engines: readonly Engine[], track: Track): Driver {
  const dueAt = script.orders.map(({ when }) => ('time' in when ? when.time : railAt(track, when.chainage)));
  let next = 0;
  const turns = engines.map(() => ({ from: 0, to: 0, start: 0, ramp: 0 }));
  const driver = {
    turning: false,
    drive(time: number, leading: number) {
      for (let order = script.orders[next]; order !== undefined; order = script.orders[next]) {
        if (('time' in order.when ? time : leading) < dueAt[next]!) break;
        next++;
        const { vehicle, setting, ramp } = order;
        engines.forEach((engine, k) => {
          if (vehicle !== undefined && vehicle !== engine.vehicle) return;
          turns[k] = { from: engine.setting, to: setting, start: time, ramp };
        });
      }
      driver.turning = false;
      for (let k = 0; k < engines.length; k++) {
        const { from, to, start, ramp } = turns[k]!;
        const share = ramp > 0 ? Math.min((time - start) / ramp, 1) : 1;
        engines[k]!.setting = from + share * (to - from);
        if (share < 1) driver.turning = true;
      }
    },
  };
  return driver;
}
