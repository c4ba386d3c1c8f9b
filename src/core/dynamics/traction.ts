import type { Vehicle } from '../stock/types.ts';
import { drivenNormalForce, frictionAtSlip } from './adhesion.ts';
import type { Losses } from './chainRows.ts';
import { motorForce, rotorAfter } from './rotor.ts';

/**
 * A locomotive in the chain: what its wheels do in a step.
 *
 * - drive: wheels grip and the motor pulls; engine and rotor move as one.
 * - hold: wheels grip and the train pushes the engine; the worm lets nothing through, so the engine moves exactly as
 *   fast as its rotor runs by itself.
 * - block: at rest, held by the worm (or, without one, by friction and the motor).
 * - slip: the rail force is what sliding friction gives; rim and vehicle go their own ways.
 */
export type Mode = 'drive' | 'hold' | 'block' | 'slip';

export interface Engine {
  readonly vehicle: number;
  readonly drive: NonNullable<Vehicle['drive']>;
  setting: number;
  /** m/s at the rim. */
  rimSpeed: number;
  mode: Mode;
  /** Force of rail on engine over the last step, N, and most the wheels could grip, N. */
  railForce: number;
  gripLimit: number;
  /** Row of the chain's system: either a prescribed end speed, or additions to the diagonal and right side. */
  fixed: boolean;
  fixedSpeed: number;
  rowDiagonal: number;
  rowRight: number;
  /** Way the engine's own running friction acts: ±1, or 0 when at rest. */
  slide: number;
  /** Prepares a step; returns `slide`. `pull` is the net drawbar pull towards the rear, N; `weighing` gravity times cosine. */
  begin(v0: number, pull: number, weighing: number, h: number): number;
  /** Checks the mode against the solution of a sweep; true when it had to change. Forces in N, see `Balance`. */
  settle(balance: Balance, h: number): boolean;
  /** Ends the step: books work, moves the rotor. Returns the running friction that acted against the motion, N. */
  book(balance: Balance, losses: Losses, h: number): number;
}

/** The engine's own force balance over a step, as the chain solved it. */
export interface Balance {
  /** Speeds at the start and end of the step and their mean, m/s. */
  v0: number;
  v1: number;
  mean: number;
  /** Coupling forces and gravity, viscous drag included, forward positive, N. */
  others: number;
  /** mass·(v1 - v0)/h, N. */
  inertial: number;
  /** Level of Coulomb friction (rolling, curve, flange) in motion, N, and its factor from rest. */
  friction: number;
  breakaway: number;
}

/** Force differences below this are rounding, N. */
const ROUNDING = 1e-12;

export function createEngine(vehicle: Vehicle, index: number): Engine {
  if (!vehicle.drive) throw new RangeError(`${vehicle.name} has no drive, so it cannot be an engine`);
  const drive = vehicle.drive;
  const line = drive.stallForce / drive.freeSpeed;
  let slipWay = 0;
  let slipForce = 0;
  let alone = 0;
  let way = 0;
  let startSpeed = 0;
  let step = 0;
  let regripped = false;
  /** Rail force is carried by the rotor unless a worm stands between. */
  const carried = (rail: number) => (drive.worm && rail * way <= 0 ? 0 : rail);

  const engine: Engine = {
    vehicle: index,
    drive,
    setting: 0,
    rimSpeed: 0,
    mode: 'block',
    railForce: 0,
    gripLimit: 0,
    fixed: true,
    fixedSpeed: 0,
    rowDiagonal: 0,
    rowRight: 0,
    slide: 0,
    begin(v0, pull, weighing, h) {
      startSpeed = v0;
      step = h;
      regripped = false;
      way = Math.sign(engine.rimSpeed) || Math.sign(engine.setting);
      alone = rotorAfter(drive, engine.setting, engine.rimSpeed, 0, h);
      const normal = drivenNormalForce(drive, weighing, pull);
      engine.gripLimit = drive.adhesion * normal;
      if (engine.mode === 'slip') slipForce = frictionAtSlip(drive, engine.rimSpeed - v0) * normal;
      enter(engine.mode);
      return engine.slide;
    },
    settle(balance, h) {
      const { v1, others, inertial, breakaway } = balance;
      // What rail force and running friction must give together.
      const need = inertial - others;
      const dry = balance.friction * (balance.v0 === 0 ? breakaway : 1);
      switch (engine.mode) {
        case 'drive': {
          if (v1 * engine.slide < 0) return enter('block');
          const rail = need + engine.slide * balance.friction;
          if (breaksLoose(rail)) return loosen(rail);
          if (drive.worm && rail * way < -ROUNDING) return enter('hold');
          return false;
        }
        case 'hold': {
          const rail = need + engine.slide * balance.friction;
          if (breaksLoose(rail)) return loosen(rail);
          if (rail * way > ROUNDING) return enter('drive');
          return false;
        }
        case 'block': {
          const motor = drive.stallForce * engine.setting;
          // A worm lets the engine start only the way its motor turns; without one the stronger side wins.
          if (
            drive.worm ? way !== 0 && (motor - need) * way > dry + ROUNDING : Math.abs(motor - need) > dry + ROUNDING
          ) {
            return enter('drive', Math.sign(motor - need));
          }
          const rail = Math.sign(need) * Math.max(Math.abs(need) - dry, 0);
          return breaksLoose(rail) ? loosen(rail) : false;
        }
        case 'slip': {
          const rail = slipWay * slipForce;
          const rim = rotorAfter(drive, engine.setting, engine.rimSpeed, carried(rail), h);
          if ((rim - v1) * slipWay < 0) {
            regripped = true;
            return enter(drive.worm && rail * way <= 0 ? 'hold' : 'drive');
          }
          if (engine.slide !== 0) {
            if (v1 * engine.slide >= 0) return false;
            engine.slide = 0;
            return true;
          }
          if (Math.abs(rail - need) <= dry) return false;
          engine.slide = Math.sign(rail - need);
          return true;
        }
      }
    },
    book(balance, losses, h) {
      const { v0, v1, mean, others, inertial } = balance;
      const need = inertial - others;
      const w0 = engine.rimSpeed;
      const facing = engine.slide || Math.sign(mean);
      let rail: number;
      let friction: number;
      let w1: number;
      if (engine.mode === 'slip') {
        rail = slipWay * slipForce;
        friction = engine.slide !== 0 ? engine.slide * balance.friction : rail - need;
        w1 = rotorAfter(drive, engine.setting, w0, carried(rail), h);
      } else if (engine.mode === 'block') {
        // At rest friction takes what it can and the wheels the rest; while stopping it acts in full.
        friction =
          mean === 0 ? -Math.sign(need) * Math.min(Math.abs(need), balance.friction) : facing * balance.friction;
        rail = need + friction;
        w1 = 0;
      } else {
        friction = facing * balance.friction;
        rail = need + friction;
        w1 = engine.mode === 'hold' ? alone : v1;
      }
      const rim = 0.5 * (w0 + w1);
      const motor = motorForce(drive, engine.setting, rim) * rim * h;
      losses.motor += motor;
      losses.slip += rail * (rim - mean) * h;
      losses.holding += motor - 0.5 * drive.rotatingMass * (w1 * w1 - w0 * w0) - rail * rim * h;
      engine.rimSpeed = w1;
      engine.railForce = rail;
      if (engine.mode === 'drive' && w1 === 0 && v0 === 0) engine.mode = 'block';
      return friction * Math.sign(mean);
    },
  };

  /** Whether the wheels cannot give this force; a wheel that has just found its grip keeps it for the step. */
  function breaksLoose(rail: number): boolean {
    return !regripped && Math.abs(rail) > engine.gripLimit;
  }

  function loosen(rail: number): boolean {
    slipForce = engine.gripLimit;
    slipWay = Math.sign(rail);
    return enter('slip');
  }

  /** Sets the mode and what the chain's row needs for it. Always true, for the callers' brevity. */
  function enter(mode: Mode, startWay = 0): boolean {
    const w0 = engine.rimSpeed;
    const v0 = startSpeed;
    engine.mode = mode;
    engine.rowDiagonal = 0;
    engine.rowRight = 0;
    engine.fixed = false;
    switch (mode) {
      case 'drive': {
        const inertia = drive.rotatingMass / step;
        engine.slide = Math.sign(v0) || startWay || way;
        engine.rowDiagonal = 2 * inertia + line;
        engine.rowRight = inertia * (v0 + w0) + drive.stallForce * engine.setting - 0.5 * line * (w0 - v0);
        break;
      }
      case 'hold':
        engine.slide = Math.sign(v0) || Math.sign(alone);
        engine.fixed = true;
        engine.fixedSpeed = alone;
        break;
      case 'block':
        engine.slide = 0;
        engine.fixed = true;
        engine.fixedSpeed = 0;
        break;
      case 'slip':
        engine.slide = Math.sign(v0);
        engine.rowRight = slipWay * slipForce;
        break;
    }
    return true;
  }

  return engine;
}
