/*
 * Over 300 lines for a reason: a row is described twice, two lanes wide and one, and the two must stand side by side.
 *
 * A train in the kernel's memory.
 *
 * The chain is folded at its middle: a row holds vehicle p and vehicle n-1-p side by side, the first half of the train
 * counted from its leading end and the second from its trailing end. Seen from its own end each half is the same chain, so
 * that one instruction serves two vehicles, and elimination runs from both ends at once and meets in the middle. In the
 * second half places and speeds are counted backwards (`place` is -σ, `speed` is -v): there "inner" is ahead. A joint
 * stands in the row of its outer vehicle; the middle joint stands in both lanes of the last row and comes out the same in
 * both. A train of odd length has one vehicle more in its second half: weightless, held, and coupled to nothing.
 */

/** All bits set: as a mask, the lane's speed is for the system to find. */
export const FREE: u64 = u64.MAX_VALUE;

/** One vehicle of either half and its inner joint, two lanes wide. */
@unmanaged
export class Row {
  /** Addresses of the route tables, four bytes each: of the first lane's vehicle and joint, then of the second's. */
  tables: v128;
  /** Addresses of the nodes they are read from in this step, in the same order; share of the way to the next node, of vehicle and joint. */
  nodes: v128;
  share: v128;
  middleShare: v128;
  /** Place, m, and speed, m/s, as they are now and as they were at the step's start; mean speed over the step as solved, m/s. */
  place: v128;
  speed: v128;
  startPlace: v128;
  startSpeed: v128;
  mean: v128;
  /** Twice the mass by the step, kg/s, and the same with what an engine adds to the diagonal; its push, N. */
  inertia: v128;
  diagonal: v128;
  push: v128;
  /** Weight, N, signed for the way the lane counts and plain; weight times Coulomb and times speed coefficient of rolling. */
  lift: v128;
  weight: v128;
  dry: v128;
  wet: v128;
  /** Gathered at the step's middle: grade, rolling and curve force N, viscous N·s/m, flange friction per newton of coupling force. */
  grade: v128;
  rolling: v128;
  curve: v128;
  viscous: v128;
  flange: v128;
  /** Way friction acts: ±1, 0 at rest. */
  slide: v128;
  /** Mask of the lanes whose speed the system finds; mean speed of the others, m/s; mask of those whose friction is booked by row. */
  free: v128;
  fixed: v128;
  booked: v128;
  /** The eliminated row: mean speed = right + upper · mean speed of the inner neighbour. */
  upper: v128;
  right: v128;
  /** Joint: spacing at free length, extension at the step's start, m; levers of the outer and the inner speed in its rate. */
  spacing: v128;
  extension: v128;
  front: v128;
  rear: v128;
  /** Its stretch of law: force at a rate = stiffness·extension + offset + slope·rate, N; `base` is all but the rate's part. */
  stiffness: v128;
  offset: v128;
  slope: v128;
  base: v128;
  /** The stretch holds from one extension to the other, and while the force keeps its way: 1 draft, -1 buff, 0 either. */
  low: v128;
  high: v128;
  way: v128;
  /** Half of what the force changes by in a step, per rate, N·s/m; damping at work, N·s/m. */
  swing: v128;
  damping: v128;
  /** Masks of the joints that drew and that pushed at the last frame; what the train asks at this frame to go on, N. */
  drew: v128;
  pushed: v128;
  asked: v128;
  /** Rate m/s, force averaged over the step, N, its extremes since the last frame, force at which it lets go. */
  rate: v128;
  force: v128;
  draftPeak: v128;
  buffPeak: v128;
  release: v128;
}

/** One lane of a row: the same numbers, of one vehicle and its inner joint. Every other number belongs to the other lane. */
@unmanaged
export class Half {
  vehicleTable: u32;
  jointTable: u32;
  _tables: u64;
  nodes: u64;
  _nodes: u64;
  share: f64;
  _share: f64;
  middleShare: f64;
  _middleShare: f64;
  place: f64;
  _place: f64;
  speed: f64;
  _speed: f64;
  startPlace: f64;
  _startPlace: f64;
  startSpeed: f64;
  _startSpeed: f64;
  mean: f64;
  _mean: f64;
  inertia: f64;
  _inertia: f64;
  diagonal: f64;
  _diagonal: f64;
  push: f64;
  _push: f64;
  lift: f64;
  _lift: f64;
  weight: f64;
  _weight: f64;
  dry: f64;
  _dry: f64;
  wet: f64;
  _wet: f64;
  grade: f64;
  _grade: f64;
  rolling: f64;
  _rolling: f64;
  curve: f64;
  _curve: f64;
  viscous: f64;
  _viscous: f64;
  flange: f64;
  _flange: f64;
  slide: f64;
  _slide: f64;
  free: u64;
  _free: u64;
  fixed: f64;
  _fixed: f64;
  booked: u64;
  _booked: u64;
  upper: f64;
  _upper: f64;
  right: f64;
  _right: f64;
  spacing: f64;
  _spacing: f64;
  extension: f64;
  _extension: f64;
  front: f64;
  _front: f64;
  rear: f64;
  _rear: f64;
  stiffness: f64;
  _stiffness: f64;
  offset: f64;
  _offset: f64;
  slope: f64;
  _slope: f64;
  base: f64;
  _base: f64;
  low: f64;
  _low: f64;
  high: f64;
  _high: f64;
  way: f64;
  _way: f64;
  swing: f64;
  _swing: f64;
  damping: f64;
  _damping: f64;
  drew: u64;
  _drew: u64;
  pushed: u64;
  _pushed: u64;
  asked: f64;
  _asked: f64;
  rate: f64;
  _rate: f64;
  force: f64;
  _force: f64;
  draftPeak: f64;
  _draftPeak: f64;
  buffPeak: f64;
  _buffPeak: f64;
  release: f64;
  _release: f64;
}

@unmanaged
export class Train {
  /** Read by the host, at these places: σ of the first and the last vehicle, m, and the last one's speed, m/s, after `advance`. */
  first: f64;
  last: f64;
  lastSpeed: f64;
  /** The first joint that has let go in the step just taken, or -1. */
  letGo: f64;
  /** Steps up to now, one after the other, in which an engine was asked to move and did not, its knob being left alone. */
  stuck: f64;
  /** Steps taken; whether a knob is being turned. */
  steps: i32;
  turning: i32;
  /** Vehicles, rows, engines. */
  count: i32;
  rowCount: i32;
  engineCount: i32;
  /** Vehicles at rest that friction holds; joints whose force bends within the step. */
  resting: i32;
  bending: i32;
  /** Sweeps done, and steps whose branches did not settle. */
  sweeps: i32;
  unsettled: i32;
  step: f64;
  gravity: f64;
  /**
   * What a sweep uses all along the train, two lanes wide and ready in memory: there are more of them than registers. Half
   * the step; nodes a metre the way a lane counts, and half of that; node the rail distance 0 lies at, less origin; last
   * node a stretch can start from; flange friction.
   */
  halfStep: v128;
  toNode: v128;
  middleToNode: v128;
  firstNode: v128;
  lastNodes: v128;
  flangeFriction: v128;
  one: v128;
  whole: v128;
  sign: v128;
  /** Route tables: rail distance of node 0, m, nodes a metre, last node a stretch can start from. */
  origin: f64;
  perNode: f64;
  lastNode: f64;
  /** Table of the chainage at each node, m. */
  chainage: u32;
  /** Driven mass of all engines, kg. */
  drivenMass: f64;
  /** Work taken by each loss since the start, J; `motor` is what went in. */
  motor: f64;
  slip: f64;
  holding: f64;
  rolling: v128;
  curve: v128;
  flange: v128;
  coupler: v128;
  /** Masks a sweep gathers: lanes that are not as foretold, lanes whose joint is past its release force. */
  wrong: v128;
  past: v128;
  /** The same at the step's start. */
  startRolling: v128;
  startCurve: v128;
  startFlange: v128;
  startCoupler: v128;
  /** Mask: the forces of the step before are still to be counted among the peaks. */
  fold: v128;
  rows: usize;
  vehicles: usize;
  joints: usize;
  engines: usize;
}

/** What of a vehicle no sweep needs. */
@unmanaged
export class Vehicle {
  breakaway: f64;
  /** 0 a vehicle that runs free, 1 an engine, 2 the one that makes a train's length even. */
  kind: i32;
}

/** Law of one joint, see couplerLaw.ts; `bent` while its force over the step is not one straight line in its rate. */
@unmanaged
export class Joint {
  draftStiffness: f64;
  draftFrom: f64;
  draftSecond: f64;
  draftPlay: f64;
  buffStiffness: f64;
  buffFrom: f64;
  buffSecond: f64;
  buffPlay: f64;
  damping: f64;
  bent: i32;
}

export function rowAt(train: Train, p: i32): Row {
  return changetype<Row>(train.rows + <usize>p * offsetof<Row>());
}

/** Lane of vehicle `i`: 0 in the first half, 1 in the second. */
export function laneOf(train: Train, i: i32): i32 {
  return i32(i >= train.rowCount);
}

/** Vehicle i, or the joint behind it when it is of the first half and before it when of the second. */
export function halfAt(train: Train, i: i32): Half {
  const lane = laneOf(train, i);
  const p = lane ? 2 * train.rowCount - 1 - i : i;
  return changetype<Half>(train.rows + <usize>p * offsetof<Row>() + ((<usize>lane) << 3));
}

/** Joint j, behind vehicle j. Of the middle joint, the lane of the first half. */
export function jointHalf(train: Train, j: i32): Half {
  return halfAt(train, j < train.rowCount ? j : j + 1);
}

/**
 * Writes a number of one lane, `field` its offset, as a whole pair: a sweep reads both lanes at once soon after, and would
 * have to wait for a narrow store to reach the cache.
 */
export function setLane(half: Half, field: usize, value: f64): void {
  const at = changetype<usize>(half) + field;
  const pair = v128.load(at & ~15);
  v128.store(at & ~15, at & 8 ? f64x2.replace_lane(pair, 1, value) : f64x2.replace_lane(pair, 0, value));
}

/** The same for a mask. */
export function setLaneBits(half: Half, field: usize, bits: u64): void {
  const at = changetype<usize>(half) + field;
  const pair = v128.load(at & ~15);
  v128.store(at & ~15, at & 8 ? i64x2.replace_lane(pair, 1, bits) : i64x2.replace_lane(pair, 0, bits));
}

/** The row towards the end of the train, same lane. Before the first stands one without force. */
export function outerOf(half: Half): Half {
  return changetype<Half>(changetype<usize>(half) - offsetof<Row>());
}

/** 1 where a lane counts along the rail, -1 where it counts backwards. */
export function countOf(train: Train, i: i32): f64 {
  return laneOf(train, i) ? -1 : 1;
}

/** A table of one value a node, at a rail distance, m, between its nodes. */
export function tabulated(train: Train, table: u32, sigma: f64): f64 {
  const x = (sigma - train.origin) * train.perNode;
  const k = Math.min(Math.max(Math.floor(x), 0), train.lastNode);
  const at = <usize>table + ((<usize>k) << 3);
  const from = load<f64>(at);
  return from + (load<f64>(at, 8) - from) * (x - k);
}

/** A place or speed of a lane along the rail; a zero without sign. */
export function along(train: Train, i: i32, value: f64): f64 {
  return countOf(train, i) * value + 0;
}

export function vehicleAt(train: Train, i: i32): Vehicle {
  return changetype<Vehicle>(train.vehicles + <usize>i * offsetof<Vehicle>());
}

export function jointAt(train: Train, j: i32): Joint {
  return changetype<Joint>(train.joints + <usize>j * offsetof<Joint>());
}
