import { exp } from '../../../math/exponential';
import { Half } from './train';

/** Share of the stall force that gears and brushes take from a rotor running faster than its setting. An assumption. */
const COAST_DRAG_SHARE: f64 = 0.1;

/**
 * What a locomotive's wheels do in a step:
 *
 * - drive: wheels grip and the motor pulls; engine and rotor move as one.
 * - hold: wheels grip and the train pushes the engine; the worm lets nothing through, so the engine moves exactly as
 *   fast as its rotor runs by itself.
 * - block: at rest, held by the worm (or, without one, by friction and the motor).
 * - slip: the rail force is what sliding friction gives; rim and vehicle go their own ways.
 */
export const enum Mode {
  drive = 0,
  hold = 1,
  block = 2,
  slip = 3,
}

/** What the driver's hand does: nothing, turns a setting to another, or has a controller hold a speed. */
export const enum Knob {
  still = 0,
  turn = 1,
  hold = 2,
}

/** An engine: its drive's constants, its state, and what it asks of its row. Ways and speeds are along the rail. */
@unmanaged
export class Engine {
  /** -1..1 */
  setting: f64;
  /** m/s at the rim. */
  rimSpeed: f64;
  /** Force of rail on engine over the last step, N, and most the wheels could grip, N. */
  railForce: f64;
  gripLimit: f64;
  /** Of the vehicle, m/s. */
  speed: f64;
  mode: i32;
  vehicle: i32;
  worm: i32;
  /** Table of what driven axles grip over what they would on level track without tyres, by node; 0: the same everywhere. */
  gripTable: u32;
  /** Its lane of the chain, and the way that counts, ±1. */
  half: Half;
  count: f64;
  drivenMass: f64;
  adhesion: f64;
  slidingAdhesion: f64;
  slipScale: f64;
  stallForce: f64;
  freeSpeed: f64;
  rotatingMass: f64;
  /** Fall of the motor's force with speed, N·s/m, and the rotor's mass by the step, kg/s. */
  line: f64;
  inertia: f64;
  /** Normal force taken off the driven wheels by each newton of drawbar pull. */
  transfer: f64;
  /** Its knob, see knobs.ts: from and to a setting, or a speed, m/s, that is held; start and length of the turning, s. */
  knob: i32;
  rampFrom: f64;
  rampTo: f64;
  rampStart: f64;
  ramp: f64;
  /** Way of the speed held, most setting the controller may use, its gains and its integral, as a setting. */
  heldWay: f64;
  most: f64;
  gain: f64;
  integralGain: f64;
  integral: f64;
  /** Whether the wheels have found their grip within this step. */
  regripped: i32;
  /** Row of the chain's system: either a prescribed end speed, or additions to the diagonal and right side. */
  fixed: i32;
  fixedSpeed: f64;
  rowDiagonal: f64;
  rowRight: f64;
  /** Way the engine's own running friction acts: ±1, or 0 when at rest. */
  slide: f64;
  /** Within a step: way of the rotor, its end speed when alone, the vehicle's start speed, way and force of slipping wheels. */
  way: f64;
  alone: f64;
  startSpeed: f64;
  slipWay: f64;
  slipForce: f64;
  /** As the last sweep has it: speed at the step's end and mean speed, m/s; what rail force and running friction must give together, N, and most running friction, N. */
  endSpeed: f64;
  mean: f64;
  need: f64;
  friction: f64;
}

/** -1, 0 or 1. */
export function signOf(x: f64): f64 {
  return x > 0 ? 1 : x < 0 ? -1 : 0;
}

/** Force of the motor at the rim by its straight line, N: `stallForce·setting - (stallForce/freeSpeed)·rim`. */
export function motorForce(engine: Engine, rim: f64): f64 {
  return engine.stallForce * engine.setting - engine.line * rim;
}

/** Drag on a rotor that runs faster than its setting asks, N, along the direction it opposes. */
function coastDrag(engine: Engine, rim: f64): f64 {
  if (!engine.worm || rim === 0) return 0;
  const way = signOf(rim);
  const over = rim * way > Math.max(engine.freeSpeed * engine.setting * way, 0);
  return over ? way * COAST_DRAG_SHARE * engine.stallForce : 0;
}

/**
 * Rim speed at the end of a step of a rotor that feels only its motor and a rail force `load`, m/s.
 *
 * Trapezoidal in the motor line; never passes the speed it is falling to, so a worm comes to its setting, and at
 * setting 0 to rest, in finite time.
 */
export function rotorAfter(engine: Engine, load: f64): f64 {
  const rim = engine.rimSpeed;
  const setting = engine.setting;
  const line = engine.line;
  const inertia = engine.inertia;
  const drag = coastDrag(engine, rim);
  const next = (inertia * rim + engine.stallForce * setting - 0.5 * line * rim - drag - load) / (inertia + 0.5 * line);
  if (!engine.worm) return next;
  const way = rim === 0 ? signOf(setting) : signOf(rim);
  if (way === 0) return 0;
  const asked = Math.max(engine.freeSpeed * setting * way, 0);
  const was = rim * way;
  const now = next * way;
  if (load === 0 && (was - asked) * (now - asked) < 0) return asked * way;
  return Math.max(now, 0) * way;
}

/**
 * Wheel-rail coefficient at a slip speed, m/s: `sliding + (adhesion - sliding)·exp(-slip/scale)`.
 *
 * It falls as the wheels spin faster, so wheels break loose at the full coefficient and find their grip again only
 * where the motor needs less than the lower one. The exponential form is this project's choice: no measured law at
 * model scale was found.
 */
export function frictionAtSlip(engine: Engine, slip: f64): f64 {
  return engine.slidingAdhesion + (engine.adhesion - engine.slidingAdhesion) * exp(-Math.abs(slip) / engine.slipScale);
}
