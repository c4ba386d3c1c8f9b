/* Traction: how an engine enters its row of the system, which of its modes the solution bears out, and what its work is. */
import { Engine, frictionAtSlip, Mode, motorForce, rotorAfter, signOf } from './motor';
import { countOf, FREE, Half, halfAt, outerOf, Train, vehicleAt } from './train';
import { chainForce, frictionOf } from './vehicles';

/** Force differences below this are rounding, N. */
const ROUNDING: f64 = 1e-12;

export function engineAt(train: Train, e: i32): Engine {
  return changetype<Engine>(train.engines + <usize>e * offsetof<Engine>());
}

/** The engine's own force balance over a step, as the chain solved it, along the rail. */
class Balance {
  /** Speeds at the start and end of the step and their mean, m/s. */
  v0: f64 = 0;
  v1: f64 = 0;
  mean: f64 = 0;
  /** What rail force and running friction must give together, N. */
  need: f64 = 0;
  /** Level of Coulomb friction (rolling, curve, flange) in motion, N, and from rest. */
  friction: f64 = 0;
  breakaway: f64 = 0;
}

const balance = new Balance();

function takeBalance(train: Train, engine: Engine): void {
  const half = halfAt(train, engine.vehicle);
  const count = countOf(train, engine.vehicle);
  const v0 = engine.startSpeed;
  const mean = count * half.mean;
  const v1 = engine.fixed ? engine.fixedSpeed : engine.slide === 0 ? 0 : 2 * mean - v0;
  balance.v0 = v0;
  balance.v1 = v1;
  balance.mean = mean;
  balance.need = 0.5 * half.inertia * (v1 - v0) - (count * chainForce(half) - half.viscous * mean);
  balance.friction = frictionOf(half);
  balance.breakaway = vehicleAt(train, engine.vehicle).breakaway;
}

/** Writes what an engine asks for into its row of the system. */
function enterRow(train: Train, engine: Engine): void {
  const half = halfAt(train, engine.vehicle);
  const count = countOf(train, engine.vehicle);
  const prescribed = engine.fixed || engine.slide === 0;
  half.free = prescribed ? 0 : FREE;
  half.fixed = prescribed ? 0.5 * count * (engine.startSpeed + (engine.fixed ? engine.fixedSpeed : 0)) : 0;
  half.slide = count * engine.slide;
  half.diagonal = half.inertia + engine.rowDiagonal;
  half.push = count * engine.rowRight;
}

/** Sets the mode and what the row needs for it. Always true, for the callers' brevity. */
function enter(train: Train, engine: Engine, mode: Mode, startWay: f64 = 0): bool {
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
  enterRow(train, engine);
  return true;
}

/** Whether the wheels cannot give this force; a wheel that has just found its grip keeps it for the step. */
function breaksLoose(engine: Engine, rail: f64): bool {
  return !engine.regripped && Math.abs(rail) > engine.gripLimit;
}

function loosen(train: Train, engine: Engine, rail: f64): bool {
  engine.slipForce = engine.gripLimit;
  engine.slipWay = signOf(rail);
  return enter(train, engine, Mode.slip);
}

/** Rail force is carried by the rotor unless a worm stands between. */
function carried(engine: Engine, rail: f64): f64 {
  return engine.worm && rail * engine.way <= 0 ? 0 : rail;
}

/** Gravity times cosine of the grade times what the load on driven axles is of that on level track, m/s². */
function weighing(train: Train, engine: Engine, half: Half): f64 {
  const x = (countOf(train, engine.vehicle) * half.place - train.origin) * train.perNode;
  const k = Math.min(Math.max(Math.floor(x), 0), train.lastNode);
  const cosine = load<f64>(<usize>half.vehicleTable + ((<usize>k) << 5), 8);
  if (engine.gripTable === 0) return train.gravity * cosine;
  const share = <usize>engine.gripTable + ((<usize>k) << 3);
  const from = load<f64>(share);
  return train.gravity * cosine * (from + (load<f64>(share, 8) - from) * (x - k));
}

/** Prepares a step. */
export function beginEngine(train: Train, engine: Engine): void {
  const half = halfAt(train, engine.vehicle);
  const count = countOf(train, engine.vehicle);
  engine.startSpeed = count * half.speed;
  engine.regripped = 0;
  engine.way = engine.rimSpeed !== 0 ? signOf(engine.rimSpeed) : signOf(engine.setting);
  engine.alone = rotorAfter(engine, 0);
  // Net drawbar pull towards the engine's rear takes weight off its driven wheels.
  const pull = count * (half.force - outerOf(half).force);
  const normal = Math.max(engine.drivenMass * weighing(train, engine, half) - engine.transfer * pull, 0);
  engine.gripLimit = engine.adhesion * normal;
  if (engine.mode === Mode.slip) {
    engine.slipForce = frictionAtSlip(engine, engine.rimSpeed - engine.startSpeed) * normal;
  }
  enter(train, engine, engine.mode);
}

/** Checks the mode against the solution of a sweep; true when it had to change. */
export function settleEngine(train: Train, engine: Engine): bool {
  takeBalance(train, engine);
  const v1 = balance.v1;
  const need = balance.need;
  const way = engine.way;
  if (engine.mode === Mode.block) {
    const dry = balance.friction * (balance.v0 === 0 ? balance.breakaway : 1);
    // What motor and rotor give if the wheels end the step at rest: a rotor stopped within it gives its momentum too.
    const motor = engine.stallForce * engine.setting + (engine.inertia - 0.5 * engine.line) * engine.rimSpeed;
    // A worm lets the engine start only the way its motor turns; without one the stronger side wins.
    if (engine.worm ? way !== 0 && (motor - need) * way > dry + ROUNDING : Math.abs(motor - need) > dry + ROUNDING) {
      return enter(train, engine, Mode.drive, signOf(motor - need));
    }
    const rail = signOf(need) * Math.max(Math.abs(need) - dry, 0);
    return breaksLoose(engine, rail) ? loosen(train, engine, rail) : false;
  }
  if (engine.mode === Mode.slip) {
    const rail = engine.slipWay * engine.slipForce;
    const rim = rotorAfter(engine, carried(engine, rail));
    if ((rim - v1) * engine.slipWay < 0) {
      engine.regripped = 1;
      return enter(train, engine, engine.worm && rail * way <= 0 ? Mode.hold : Mode.drive);
    }
    if (engine.slide !== 0) {
      if (v1 * engine.slide >= 0) return false;
      engine.slide = 0;
    } else {
      const dry = balance.friction * (balance.v0 === 0 ? balance.breakaway : 1);
      if (Math.abs(rail - need) <= dry) return false;
      engine.slide = signOf(rail - need);
    }
    enterRow(train, engine);
    return true;
  }
  if (engine.mode === Mode.drive && v1 * engine.slide < 0) return enter(train, engine, Mode.block);
  const rail = need + engine.slide * balance.friction;
  if (breaksLoose(engine, rail)) return loosen(train, engine, rail);
  if (engine.mode === Mode.drive) {
    return engine.worm && rail * way < -ROUNDING ? enter(train, engine, Mode.hold) : false;
  }
  return rail * way > ROUNDING ? enter(train, engine, Mode.drive) : false;
}

/** Ends the step: moves the rotor and books the engine's work; its running friction is shared out by what makes it up. */
export function bookEngine(train: Train, engine: Engine): void {
  takeBalance(train, engine);
  const h = train.step;
  const mean = balance.mean;
  const need = balance.need;
  const w0 = engine.rimSpeed;
  const facing = engine.slide !== 0 ? engine.slide : signOf(mean);
  let rail: f64;
  let friction: f64;
  let w1: f64;
  if (engine.mode === Mode.slip) {
    rail = engine.slipWay * engine.slipForce;
    friction = engine.slide !== 0 ? engine.slide * balance.friction : rail - need;
    w1 = rotorAfter(engine, carried(engine, rail));
  } else if (engine.mode === Mode.block) {
    // At rest friction takes what it can and the wheels the rest; while stopping it acts in full.
    friction = mean === 0 ? -signOf(need) * Math.min(Math.abs(need), balance.friction) : facing * balance.friction;
    rail = need + friction;
    w1 = 0;
  } else {
    friction = facing * balance.friction;
    rail = need + friction;
    w1 = engine.mode === Mode.hold ? engine.alone : balance.v1;
  }
  const rim = 0.5 * (w0 + w1);
  const motor = motorForce(engine, rim) * rim * h;
  train.motor += motor;
  train.slip += rail * (rim - mean) * h;
  train.holding += motor - 0.5 * engine.rotatingMass * (w1 * w1 - w0 * w0) - rail * rim * h;
  engine.rimSpeed = w1;
  engine.railForce = rail;
  if (engine.mode === Mode.drive && w1 === 0 && balance.v0 === 0) engine.mode = Mode.block;

  const half = halfAt(train, engine.vehicle);
  half.speed = countOf(train, engine.vehicle) * balance.v1;
  engine.speed = balance.v1 + 0;
  const level = balance.friction;
  const share = level > 0 ? ((friction * signOf(mean)) / level) * Math.abs(mean) * h : 0;
  train.rolling = booked(train.rolling, half.viscous * mean * mean * h + share * half.rolling);
  train.curve = booked(train.curve, share * half.curve);
  train.flange = booked(train.flange, share * (level - half.rolling - half.curve));
}

/** A loss kept in two lanes, with this much more. */
function booked(loss: v128, work: f64): v128 {
  return f64x2.replace_lane(loss, 0, f64x2.extract_lane(loss, 0) + work);
}
