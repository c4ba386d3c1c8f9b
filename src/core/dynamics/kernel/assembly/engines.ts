/* Traction: how an engine enters its row of the system, which of its modes the solution bears out, and what its work is. */
import { Engine, frictionAtSlip, Mode, motorForce, rotorAfter, signOf } from './motor';
import { locateAgain } from './sweeps';
import { FREE, Half, outerOf, setLane, setLaneBits, Train, vehicleAt } from './train';
import { chainForce, frictionOf } from './vehicles';

/** Force differences below this are rounding, N. */
const ROUNDING: f64 = 1e-12;

export function engineAt(train: Train, e: i32): Engine {
  return changetype<Engine>(train.engines + <usize>e * offsetof<Engine>());
}

/** Takes the engine's own force balance over a step as the chain solved it, along the rail. */
export function takeBalance(engine: Engine): void {
  const half = engine.half;
  const count = engine.count;
  const v0 = engine.startSpeed;
  const mean = count * half.mean;
  const v1 = engine.fixed ? engine.fixedSpeed : engine.slide === 0 ? 0 : 2 * mean - v0;
  engine.endSpeed = v1;
  engine.mean = mean;
  engine.need = 0.5 * half.inertia * (v1 - v0) - (count * chainForce(half) - half.viscous * mean);
  engine.friction = frictionOf(half);
}

/** Its running friction at the step's start, from rest or not, N. */
function frictionAtStart(train: Train, engine: Engine): f64 {
  return engine.friction * (engine.startSpeed === 0 ? vehicleAt(train, engine.vehicle).breakaway : 1);
}

/** Writes what an engine asks for into its row of the system. */
function enterRow(engine: Engine): void {
  const half = engine.half;
  const count = engine.count;
  const prescribed = engine.fixed || engine.slide === 0;
  const mean = prescribed ? 0.5 * count * (engine.startSpeed + (engine.fixed ? engine.fixedSpeed : 0)) : 0;
  setLaneBits(half, offsetof<Half>('free'), prescribed ? 0 : FREE);
  setLane(half, offsetof<Half>('fixed'), mean);
  setLane(half, offsetof<Half>('slide'), count * engine.slide);
  setLane(half, offsetof<Half>('diagonal'), half.inertia + engine.rowDiagonal);
  setLane(half, offsetof<Half>('push'), count * engine.rowRight);
}

/** Sets the mode and what the row needs for it. Always true, for the callers' brevity. */
function enter(engine: Engine, mode: Mode, startWay: f64 = 0): bool {
  const w0 = engine.rimSpeed;
  const v0 = engine.startSpeed;
  engine.mode = mode;
  engine.rowDiagonal = 0;
  engine.rowRight = 0;
  engine.fixed = 0;
  if (mode === Mode.drive) {
    const line = engine.line;
    const inertia = engine.inertia;
    engine.slide = startWay !== 0 ? startWay : v0 !== 0 ? signOf(v0) : engine.way;
    engine.rowDiagonal = 2 * inertia + line;
    engine.rowRight = inertia * (v0 + w0) + engine.stallForce * engine.setting - 0.5 * line * (w0 - v0);
  } else if (mode === Mode.hold) {
    engine.alone = rotorAfter(engine, 0);
    engine.slide = v0 !== 0 ? signOf(v0) : signOf(engine.alone);
    engine.fixed = 1;
    engine.fixedSpeed = engine.alone;
  } else if (mode === Mode.block) {
    engine.slide = 0;
    engine.fixed = 1;
    engine.fixedSpeed = 0;
  } else {
    engine.slide = signOf(v0);
    engine.rowRight = engine.slipWay * engine.slipForce;
  }
  enterRow(engine);
  return true;
}

/** Whether the wheels cannot give this force; a wheel that has just found its grip keeps it for the step. */
function breaksLoose(engine: Engine, rail: f64): bool {
  return !engine.regripped && Math.abs(rail) > engine.gripLimit;
}

function loosen(engine: Engine, rail: f64): bool {
  engine.slipForce = engine.gripLimit;
  engine.slipWay = signOf(rail);
  return enter(engine, Mode.slip);
}

/** Rail force is carried by the rotor unless a worm stands between. */
function carried(engine: Engine, rail: f64): f64 {
  return engine.worm && rail * engine.way <= 0 ? 0 : rail;
}

/** Gravity times cosine of the grade times what driven axles grip of what they would on level track without tyres, m/s². */
function weighing(train: Train, engine: Engine): f64 {
  const half = engine.half;
  const x = (engine.count * half.place - train.origin) * train.perNode;
  const k = Math.min(Math.max(Math.floor(x), 0), train.lastNode);
  const cosine = load<f64>(<usize>half.vehicleTable + ((<usize>k) << 5), 8);
  if (engine.gripTable === 0) return train.gravity * cosine;
  const share = <usize>engine.gripTable + ((<usize>k) << 3);
  const from = load<f64>(share);
  return train.gravity * cosine * (from + (load<f64>(share, 8) - from) * (x - k));
}

/** Prepares a step. */
export function beginEngine(train: Train, engine: Engine): void {
  const half = engine.half;
  const count = engine.count;
  engine.startSpeed = count * half.speed;
  engine.regripped = 0;
  engine.way = engine.rimSpeed !== 0 ? signOf(engine.rimSpeed) : signOf(engine.setting);
  // Net drawbar pull towards the engine's rear takes weight off its driven wheels.
  const pull = count * (half.force - outerOf(half).force);
  const normal = Math.max(engine.drivenMass * weighing(train, engine) - engine.transfer * pull, 0);
  engine.gripLimit = engine.adhesion * normal;
  if (engine.mode === Mode.slip) {
    engine.slipForce = frictionAtSlip(engine, engine.rimSpeed - engine.startSpeed) * normal;
  }
  enter(engine, engine.mode);
}

/** Checks the mode against the solution of a sweep; true when it had to change. */
export function settleEngine(train: Train, engine: Engine): bool {
  takeBalance(engine);
  const v1 = engine.endSpeed;
  const need = engine.need;
  const way = engine.way;
  if (engine.mode === Mode.block) {
    const dry = frictionAtStart(train, engine);
    // What motor and rotor give if the wheels end the step at rest: a rotor stopped within it gives its momentum too.
    const motor = engine.stallForce * engine.setting + (engine.inertia - 0.5 * engine.line) * engine.rimSpeed;
    // A worm lets the engine start only the way its motor turns; without one the stronger side wins.
    if (engine.worm ? way !== 0 && (motor - need) * way > dry + ROUNDING : Math.abs(motor - need) > dry + ROUNDING) {
      return enter(engine, Mode.drive, signOf(motor - need));
    }
    const rail = signOf(need) * Math.max(Math.abs(need) - dry, 0);
    return breaksLoose(engine, rail) ? loosen(engine, rail) : false;
  }
  if (engine.mode === Mode.slip) {
    const rail = engine.slipWay * engine.slipForce;
    const rim = rotorAfter(engine, carried(engine, rail));
    if ((rim - v1) * engine.slipWay < 0) {
      engine.regripped = 1;
      return enter(engine, engine.worm && rail * way <= 0 ? Mode.hold : Mode.drive);
    }
    if (engine.slide !== 0) {
      if (v1 * engine.slide >= 0) return false;
      engine.slide = 0;
    } else {
      const dry = frictionAtStart(train, engine);
      if (Math.abs(rail - need) <= dry) return false;
      engine.slide = signOf(rail - need);
    }
    enterRow(engine);
    return true;
  }
  if (engine.mode === Mode.drive && v1 * engine.slide < 0) return enter(engine, Mode.block);
  const rail = need + engine.slide * engine.friction;
  if (breaksLoose(engine, rail)) return loosen(engine, rail);
  if (engine.mode === Mode.drive) {
    return engine.worm && rail * way < -ROUNDING ? enter(engine, Mode.hold) : false;
  }
  return rail * way > ROUNDING ? enter(engine, Mode.drive) : false;
}

/**
 * Ends the step by the balance `settleEngine` took: moves the rotor and books the engine's work; its running friction is shared out by what
 * makes it up.
 */
export function bookEngine(train: Train, engine: Engine): void {
  const h = train.step;
  const mean = engine.mean;
  const need = engine.need;
  const w0 = engine.rimSpeed;
  const facing = engine.slide !== 0 ? engine.slide : signOf(mean);
  let rail: f64;
  let friction: f64;
  let w1: f64;
  if (engine.mode === Mode.slip) {
    rail = engine.slipWay * engine.slipForce;
    friction = engine.slide !== 0 ? engine.slide * engine.friction : rail - need;
    w1 = rotorAfter(engine, carried(engine, rail));
  } else if (engine.mode === Mode.block) {
    // At rest friction takes what it can and the wheels the rest; while stopping it acts in full.
    friction = mean === 0 ? -signOf(need) * Math.min(Math.abs(need), engine.friction) : facing * engine.friction;
    rail = need + friction;
    w1 = 0;
  } else {
    friction = facing * engine.friction;
    rail = need + friction;
    w1 = engine.mode === Mode.hold ? engine.alone : engine.endSpeed;
  }
  const rim = 0.5 * (w0 + w1);
  const motor = motorForce(engine, rim) * rim * h;
  train.motor += motor;
  train.slip += rail * (rim - mean) * h;
  train.holding += motor - 0.5 * engine.rotatingMass * (w1 * w1 - w0 * w0) - rail * rim * h;
  engine.rimSpeed = w1;
  engine.railForce = rail;
  if (engine.mode === Mode.drive && w1 === 0 && engine.startSpeed === 0) engine.mode = Mode.block;

  const half = engine.half;
  setLane(half, offsetof<Half>('speed'), engine.count * engine.endSpeed);
  engine.speed = engine.endSpeed + 0;
  if (engine.fixed) locateAgain(train, half);
  const level = engine.friction;
  const share = level > 0 ? ((friction * signOf(mean)) / level) * Math.abs(mean) * h : 0;
  train.rolling = booked(train.rolling, half.viscous * mean * mean * h + share * half.rolling);
  train.curve = booked(train.curve, share * half.curve);
  train.flange = booked(train.flange, share * (level - half.rolling - half.curve));
}

/** A loss kept in two lanes, with this much more. */
function booked(loss: v128, work: f64): v128 {
  return f64x2.replace_lane(loss, 0, f64x2.extract_lane(loss, 0) + work);
}
