import { railAt, type Track } from '../track/index.ts';
import { controlDefaults } from './defaults.ts';
import type { Engine } from './traction.ts';
import type { Script } from './types.ts';

/**
 * The driver's mind: hands the script's orders to the engines, one after the other. How a knob is turned, or a speed held, from step to step
 * is in kernel/assembly/knobs.ts.
 */
export interface Driver {
  /** Obeys what is due at the step with its middle at `time`, s, and its leading end at rail distance `leading`, m. */
  obey(time: number, leading: number): void;
  /** Shuts off: every setting to 0 at once, or from `start` on over `ramp`, s, and no order is obeyed any more. */
  stop(turning?: { readonly start: number; readonly ramp: number }): void;
  /** When, s, or at which rail distance of the leading end, m, the next order falls due; infinite where it is the other. */
  dueTime(): number;
  dueLeading(): number;
}

export function createDriver(script: Script, engines: readonly Engine[], track: Track): Driver {
  const dueAt = script.orders.map(({ when }) => ('time' in when ? when.time : railAt(track, when.chainage)));
  let next = 0;
  const dueBy = (what: 'time' | 'chainage') => {
    const order = script.orders[next];
    return order !== undefined && what in order.when ? dueAt[next]! : Number.POSITIVE_INFINITY;
  };
  return {
    dueTime: () => dueBy('time'),
    dueLeading: () => dueBy('chainage'),
    stop(turning) {
      next = script.orders.length;
      for (const engine of engines) {
        if (turning === undefined) engine.cut();
        else engine.turn(engine.setting, 0, turning.start, turning.ramp);
      }
    },
    obey(time, leading) {
      for (let order = script.orders[next]; order !== undefined; order = script.orders[next]) {
        if (('time' in order.when ? time : leading) < dueAt[next]!) break;
        next++;
        const { vehicle, setting, hold, ramp } = order;
        for (const engine of engines) {
          if (vehicle !== undefined && vehicle !== engine.vehicle) continue;
          if (hold === undefined) engine.turn(engine.setting, setting, time, ramp);
          else takeOver(engine, setting, hold, time, ramp);
        }
      }
    },
  };
}

/** Begins to hold a speed from the speed the wheels have now, with the integral at what keeps the setting as it is. */
function takeOver(engine: Engine, most: number, hold: number, start: number, ramp: number): void {
  const { drive, rimSpeed, setting } = engine;
  const way = Math.sign(most);
  const { proportional, integral } = controlDefaults;
  engine.turn(rimSpeed, way * hold, start, ramp);
  engine.hold(way, Math.abs(most), proportional.value, integral.value, setting - rimSpeed / drive.freeSpeed);
}
