import { railAt, type Track } from '../track/index.ts';
import { controlDefaults } from './defaults.ts';
import type { Engine } from './traction.ts';
import type { Script } from './types.ts';

/** The driver's hand: turns the script's orders into settings, one order after the other. */
export interface Driver {
  /** Sets every engine's setting for the step that starts at `time` with the leading end at rail distance `leading`. */
  drive(time: number, leading: number): void;
  /** Shuts off: every setting to 0 at once, and no order is obeyed any more. */
  stop(): void;
  /** Whether a setting, or a speed to hold, is still being turned to its new value. */
  readonly turning: boolean;
  /** Whether settings change from step to step; if not, they stay until the next order is due. */
  busy(): boolean;
  /** When, s, or at which rail distance of the leading end, m, the next order falls due; infinite where it is the other. */
  dueTime(): number;
  dueLeading(): number;
}

/** One engine's knob on its way: a setting, or a speed to hold (m/s, with sign) and the most setting it may use. */
interface Turn {
  from: number;
  to: number;
  start: number;
  ramp: number;
  /** Null where the setting itself was ordered. */
  held: { readonly way: number; readonly most: number } | null;
  /** The controller's integral, as a setting. */
  sum: number;
}

/** A controller that changes its setting more slowly than this has settled, 1/s: the whole range would take it 1000 s. */
const SETTLED_RATE = 1e-3;

export function createDriver(script: Script, engines: readonly Engine[], track: Track, step: number): Driver {
  const dueAt = script.orders.map(({ when }) => ('time' in when ? when.time : railAt(track, when.chainage)));
  let next = 0;
  const turns = engines.map((): Turn => ({ from: 0, to: 0, start: 0, ramp: 0, held: null, sum: 0 }));
  const dueBy = (what: 'time' | 'chainage') => {
    const order = script.orders[next];
    return order !== undefined && what in order.when ? dueAt[next]! : Number.POSITIVE_INFINITY;
  };
  const driver = {
    turning: false,
    busy: () => driver.turning || turns.some(({ held }) => held !== null),
    dueTime: () => dueBy('time'),
    dueLeading: () => dueBy('chainage'),
    stop() {
      next = script.orders.length;
      for (let k = 0; k < turns.length; k++) turns[k] = { from: 0, to: 0, start: 0, ramp: 0, held: null, sum: 0 };
    },
    drive(time: number, leading: number) {
      for (let order = script.orders[next]; order !== undefined; order = script.orders[next]) {
        if (('time' in order.when ? time : leading) < dueAt[next]!) break;
        next++;
        const { vehicle, setting, hold, ramp } = order;
        engines.forEach((engine, k) => {
          if (vehicle !== undefined && vehicle !== engine.vehicle) return;
          turns[k] =
            hold === undefined
              ? { from: engine.setting, to: setting, start: time, ramp, held: null, sum: 0 }
              : takeOver(engine, setting, hold, time, ramp);
        });
      }
      driver.turning = false;
      for (let k = 0; k < engines.length; k++) {
        const turn = turns[k]!;
        const { from, to, start, ramp } = turn;
        const share = ramp > 0 ? Math.min((time - start) / ramp, 1) : 1;
        const asked = from + share * (to - from);
        if (share < 1) driver.turning = true;
        const engine = engines[k]!;
        if (turn.held === null) engine.setting = asked;
        else if (compensate(engine, turn, asked, step)) driver.turning = true;
      }
    },
  };
  return driver;
}

/** Begins to hold a speed from the speed the wheels have now, with the integral at what keeps the setting as it is. */
function takeOver({ drive, rimSpeed, setting }: Engine, most: number, hold: number, start: number, ramp: number): Turn {
  const way = Math.sign(most);
  const held = { way, most: Math.abs(most) };
  return { from: rimSpeed, to: way * hold, start, ramp, held, sum: setting - rimSpeed / drive.freeSpeed };
}

/**
 * Load-compensated control of one engine for a step: setting = v/v_free + p·e + ∫i·e dt with e the share of free speed that the rim
 * lacks, between nothing and the most it may use, the way it was ordered. Measured at the rim, as back-EMF measures the motor: spinning wheels
 * look like speed held. Against the limits the integral stops growing (anti-windup). Returns whether the setting still moves.
 */
function compensate(engine: Engine, turn: Turn, asked: number, elapsed: number): boolean {
  if (asked === 0) {
    // Stopped: the motor is cut, or what the integral holds would go on pushing at a standing train.
    turn.sum = 0;
    engine.setting = 0;
    return false;
  }
  const { way, most } = turn.held!;
  const free = engine.drive.freeSpeed;
  const lack = (asked - engine.rimSpeed) / free;
  const sum = turn.sum + controlDefaults.integral.value * lack * elapsed;
  const wanted = way * (asked / free + controlDefaults.proportional.value * lack + sum);
  const setting = way * Math.min(Math.max(wanted, 0), most);
  const beyond = way * setting !== wanted;
  // Beyond a limit only what leads back is kept.
  if (!beyond || (wanted > most ? way * lack < 0 : way * lack > 0)) turn.sum = sum;
  const moves = Math.abs(setting - engine.setting) > SETTLED_RATE * elapsed;
  engine.setting = setting;
  return moves;
}
