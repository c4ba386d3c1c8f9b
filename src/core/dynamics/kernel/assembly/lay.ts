/*
 * Lays trains out in the kernel's memory: makes them, gives their vehicles, joints and engines their numbers, turns the driver's knobs.
 */
import { engineAt } from './engines';
import { chooseStretch } from './joints';
import { Engine, Knob, Mode, signOf } from './motor';
import { both, two } from './pairs';
import { keepEnds, locateJoint } from './read';
import { WHOLE } from './sweeps';
import { countOf, Half, halfAt, Joint, jointAt, jointHalf, Row, Train, Vehicle, vehicleAt } from './train';
import { release } from './vehicles';

/** Room in the kernel's memory, at an address divisible by 16. */
export function room(bytes: usize): usize {
  return heap.alloc(bytes);
}

/** Gives room back; only what was taken last comes free. */
export function giveBack(at: usize): void {
  heap.free(at);
}

function zeroed(bytes: usize): usize {
  const at = room(bytes);
  memory.fill(at, 0, bytes);
  return at;
}

export function makeTrain(
  count: i32,
  engines: i32,
  step: f64,
  gravity: f64,
  flangeFriction: f64,
  origin: f64,
  perNode: f64,
  lastNode: f64,
  nowhere: u32,
  chainage: u32,
): Train {
  const train = changetype<Train>(zeroed(offsetof<Train>()));
  const rows = (count + 1) >> 1;
  train.count = count;
  train.rowCount = rows;
  train.engineCount = engines;
  train.step = step;
  train.gravity = gravity;
  train.halfStep = both(0.5 * step);
  train.toNode = two(perNode, -perNode);
  train.middleToNode = two(0.5 * perNode, -0.5 * perNode);
  train.firstNode = both(origin * perNode);
  train.lastNodes = both(lastNode);
  train.flangeFriction = both(flangeFriction);
  train.one = both(1);
  train.whole = both(WHOLE);
  train.sign = both(-0.0);
  train.origin = origin;
  train.perNode = perNode;
  train.lastNode = lastNode;
  train.chainage = chainage;
  train.letGo = -1;
  // One row before the first and one after the last stand for what is beyond the ends and the middle.
  train.rows = zeroed(<usize>(rows + 2) * offsetof<Row>()) + offsetof<Row>();
  const outside = changetype<Row>(train.rows - offsetof<Row>());
  train.vehicles = zeroed(<usize>(2 * rows) * offsetof<Vehicle>());
  train.joints = zeroed(<usize>(2 * rows) * offsetof<Joint>());
  train.engines = zeroed(<usize>engines * offsetof<Engine>());
  outside.front = train.one;
  outside.rear = train.one;
  for (let i = 0; i < 2 * rows; i++) {
    const half = halfAt(train, i);
    half.vehicleTable = nowhere;
    half.jointTable = nowhere;
    half.inertia = 1;
    half.diagonal = 1;
    half.front = 1;
    half.rear = 1;
    half.low = -Infinity;
    half.high = Infinity;
    half.release = Infinity;
    vehicleAt(train, i).kind = 2;
  }
  return train;
}

/** Gives back a train's memory, when it was the last to be made. */
export function dropTrain(train: Train): void {
  heap.free(train.engines);
  heap.free(train.joints);
  heap.free(train.vehicles);
  heap.free(train.rows - offsetof<Row>());
  heap.free(changetype<usize>(train));
}

/** Puts vehicle i at rest at a rail distance. `table` is the address of its route table; `isEngine` when a drive follows. */
export function setVehicle(
  train: Train,
  i: i32,
  sigma: f64,
  mass: f64,
  coulomb: f64,
  perSpeed: f64,
  breakaway: f64,
  table: u32,
  isEngine: bool,
): void {
  const half = halfAt(train, i);
  const count = countOf(train, i);
  const weight = mass * train.gravity;
  half.vehicleTable = table;
  half.place = count * sigma;
  half.inertia = (2 * mass) / train.step;
  half.diagonal = half.inertia;
  half.weight = weight;
  half.lift = count * weight;
  half.dry = weight * coulomb;
  half.wet = weight * perSpeed;
  vehicleAt(train, i).breakaway = breakaway;
  vehicleAt(train, i).kind = isEngine ? 1 : 0;
  if (!isEngine) train.resting++;
  keepMiddle(train);
  keepEnds(train);
}

/** Beyond the last row stands its mirror image: the inner neighbours of the innermost vehicles. */
function keepMiddle(train: Train): void {
  const last = halfAt(train, train.rowCount - 1);
  const first = halfAt(train, train.rowCount);
  changetype<Half>(changetype<usize>(last) + offsetof<Row>()).place = -first.place;
  changetype<Half>(changetype<usize>(first) + offsetof<Row>()).place = -last.place;
}

/** Gives joint j its table, its spacing at free length, m, and the force at which it lets go, N. */
export function setJoint(train: Train, j: i32, table: u32, spacing: f64, releaseForce: f64): void {
  const half = jointHalf(train, j);
  half.jointTable = table;
  half.spacing = spacing;
  half.release = releaseForce;
  if (j !== train.rowCount - 1) return;
  const twin = halfAt(train, j + 1);
  twin.jointTable = table;
  twin.spacing = spacing;
}

/** Gives joint j its law, see couplerLaw.ts. */
export function setLaw(
  train: Train,
  j: i32,
  draftStiffness: f64,
  draftFrom: f64,
  draftSecond: f64,
  draftPlay: f64,
  buffStiffness: f64,
  buffFrom: f64,
  buffSecond: f64,
  buffPlay: f64,
  damping: f64,
): void {
  const joint = jointAt(train, j);
  joint.draftStiffness = draftStiffness;
  joint.draftFrom = draftFrom;
  joint.draftSecond = draftSecond;
  joint.draftPlay = draftPlay;
  joint.buffStiffness = buffStiffness;
  joint.buffFrom = buffFrom;
  joint.buffSecond = buffSecond;
  joint.buffPlay = buffPlay;
  joint.damping = damping;
  locateJoint(train, j);
  chooseStretch(train, j, jointHalf(train, j).extension, 0);
}

export function setEngine(
  train: Train,
  e: i32,
  vehicle: i32,
  drivenMass: f64,
  adhesion: f64,
  slidingAdhesion: f64,
  slipScale: f64,
  stallForce: f64,
  freeSpeed: f64,
  rotatingMass: f64,
  worm: bool,
  transfer: f64,
  gripTable: u32,
): void {
  const engine = engineAt(train, e);
  engine.vehicle = vehicle;
  engine.half = halfAt(train, vehicle);
  engine.count = countOf(train, vehicle);
  engine.mode = Mode.block;
  engine.drivenMass = drivenMass;
  train.drivenMass += drivenMass;
  engine.adhesion = adhesion;
  engine.slidingAdhesion = slidingAdhesion;
  engine.slipScale = slipScale;
  engine.stallForce = stallForce;
  engine.freeSpeed = freeSpeed;
  engine.rotatingMass = rotatingMass;
  engine.line = stallForce / freeSpeed;
  engine.inertia = rotatingMass / train.step;
  engine.worm = i32(worm);
  engine.transfer = transfer;
  engine.gripTable = gripTable;
}

/** Sets vehicle i in motion, or stands it still. */
export function setSpeed(train: Train, i: i32, speed: f64): void {
  const half = halfAt(train, i);
  half.speed = countOf(train, i) * speed;
  if (vehicleAt(train, i).kind !== 0) return;
  const held = !half.free;
  if (speed !== 0) {
    release(half, signOf(half.speed));
    if (held) train.resting--;
  }
}

/** Has engine e turn its setting from one to another, from `start` on for `ramp`, s. */
export function turnKnob(train: Train, e: i32, from: f64, to: f64, start: f64, ramp: f64): void {
  const engine = engineAt(train, e);
  engine.knob = Knob.turn;
  engine.rampFrom = from;
  engine.rampTo = to;
  engine.rampStart = start;
  engine.ramp = ramp;
}

/** Has a controller hold the speed engine e was last told to turn to; `integral` as it begins. */
export function holdSpeed(
  train: Train,
  e: i32,
  way: f64,
  most: f64,
  gain: f64,
  integralGain: f64,
  integral: f64,
): void {
  const engine = engineAt(train, e);
  engine.knob = Knob.hold;
  engine.heldWay = way;
  engine.most = most;
  engine.gain = gain;
  engine.integralGain = integralGain;
  engine.integral = integral;
}

/** Shuts engine e off at once. */
export function cutKnob(train: Train, e: i32): void {
  const engine = engineAt(train, e);
  engine.knob = Knob.still;
  engine.setting = 0;
}
