/* A frame: how a train stands at one moment, as the run keeps it. */
import { engineAt } from './engines';
import { signOf } from './motor';
import {
  abs,
  add,
  below,
  both,
  either,
  firsts,
  larger,
  mul,
  seconds,
  smaller,
  sub,
  two,
  unlike,
  without,
} from './pairs';
import { rowAt, Train } from './train';

/** A joint has come to draw or push, or ceased to, since the frame before; every vehicle stands. As bits of what `writeFrame` returns. */
const CONTACT_NEWS: i32 = 1;
const ALL_STAND: i32 = 2;

/**
 * Writes how the train stands to `out`, as frameLayout.ts lays it out, and begins the joints' peaks anew. Returns whether a joint's contact has
 * changed since the last frame, or did for a moment, and whether the whole train stands.
 */
export function writeFrame(train: Train, out: usize, time: f64): i32 {
  const n = train.count;
  const rows = train.rowCount;
  const way = wayAsked(train);
  const zero = both(0);
  const counts = two(1, -1);
  const middles = two(0.5, -0.5);
  const ways = two(way, -way);
  const wide = (<usize>n) << 3;
  const places = out + 8;
  const speeds = places + wide;
  const joints = speeds + wide;
  let news = zero;
  let moving = zero;
  store<f64>(out, time);
  for (let p = 0; p < rows; p++) {
    const row = rowAt(train, p);
    const place = row.place;
    const innerPlace = rowAt(train, p + 1).place;
    const speed = row.speed;
    const force = row.force;
    const outer = rowAt(train, p - 1);
    const chainage = tabulated(train, train.chainage, train.chainage, add(mul(place, counts), zero));
    const friction = add(add(row.rolling, row.curve), mul(row.flange, abs(add(outer.force, force))));
    row.asked = add(add(mul(ways, row.grade), friction), mul(row.viscous, abs(speed)));
    const here = changetype<usize>(row);
    const shift = tabulated(train, load<u32>(here, 4), load<u32>(here, 12), mul(add(place, innerPlace), middles));
    const extension = add(sub(sub(place, innerPlace), row.spacing), shift);
    const draftPeak = larger(row.draftPeak, force);
    const buffPeak = smaller(row.buffPeak, force);

    const draws = below(zero, force);
    const pushes = below(force, zero);
    const turned = either(unlike(draws, row.drew), unlike(pushes, row.pushed));
    const touched = either(without(below(zero, draftPeak), row.drew), without(below(buffPeak, zero), row.pushed));
    news = either(news, either(turned, touched));
    moving = either(moving, f64x2.ne(speed, zero));
    row.drew = draws;
    row.pushed = pushes;
    row.draftPeak = zero;
    row.buffPeak = zero;

    storeFirst(places, p, chainage);
    storeFirst(speeds, p, add(speed, zero));
    if (p < n - 1) storeJoint(joints, n - 1, p, false, force, draftPeak, buffPeak, extension);
    const i = 2 * rows - 1 - p;
    if (i >= n) continue;
    storeSecond(places, i, chainage);
    storeSecond(speeds, i, add(mul(speed, counts), zero));
    if (p < rows - 1) storeJoint(joints, n - 1, i - 1, true, force, draftPeak, buffPeak, extension);
  }
  train.fold = zero;
  writeEngines(train, joints + 4 * (wide - 8), demandOf(train));
  return (v128.any_true(news) ? CONTACT_NEWS : 0) | (v128.any_true(moving) ? 0 : ALL_STAND);
}

/** The way the engines are asked to go: 1 along the path, -1 back. */
function wayAsked(train: Train): f64 {
  for (let e = 0; e < train.engineCount; e++) {
    const setting = engineAt(train, e).setting;
    if (setting !== 0) return signOf(setting);
  }
  return 1;
}

/** Two tables of one value a node, each at a rail distance of its own, m, between its nodes. */
function tabulated(train: Train, first: u32, second: u32, sigma: v128): v128 {
  const x = mul(sub(sigma, both(train.origin)), both(train.perNode));
  const k = f64x2.floor(smaller(larger(x, both(0)), train.lastNodes));
  const node = add(k, train.whole);
  const a = v128.load(<usize>first + ((<usize>i32x4.extract_lane(node, 0)) << 3));
  const b = v128.load(<usize>second + ((<usize>i32x4.extract_lane(node, 2)) << 3));
  const from = firsts(a, b);
  return add(from, mul(sub(seconds(a, b), from), sub(x, k)));
}

function storeFirst(column: usize, i: i32, pair: v128): void {
  store<f64>(column + ((<usize>i) << 3), f64x2.extract_lane(pair, 0));
}

function storeSecond(column: usize, i: i32, pair: v128): void {
  store<f64>(column + ((<usize>i) << 3), f64x2.extract_lane(pair, 1));
}

/** Writes joint j of `count` to its four columns from one lane. */
function storeJoint(
  columns: usize,
  count: i32,
  j: i32,
  second: bool,
  force: v128,
  draftPeak: v128,
  buffPeak: v128,
  extension: v128,
): void {
  const wide = (<usize>count) << 3;
  if (second) {
    storeSecond(columns, j, force);
    storeSecond(columns + wide, j, draftPeak);
    storeSecond(columns + 2 * wide, j, buffPeak);
    storeSecond(columns + 3 * wide, j, extension);
  } else {
    storeFirst(columns, j, force);
    storeFirst(columns + wide, j, draftPeak);
    storeFirst(columns + 2 * wide, j, buffPeak);
    storeFirst(columns + 3 * wide, j, extension);
  }
}

/** What the train asks of its engines to go on at its speed, N: added up from the leading end. */
function demandOf(train: Train): f64 {
  const rows = train.rowCount;
  let asked: f64 = 0;
  for (let p = 0; p < rows; p++) asked += f64x2.extract_lane(rowAt(train, p).asked, 0);
  for (let p = rows - 1; 2 * rows - 1 - p < train.count; p--) asked += f64x2.extract_lane(rowAt(train, p).asked, 1);
  return asked;
}

/** Setting, rim speed, rail force, grip in use, motor limit, grip limit and share of the demand, a column each. */
function writeEngines(train: Train, columns: usize, asked: f64): void {
  const wide = (<usize>train.engineCount) << 3;
  for (let e = 0; e < train.engineCount; e++) {
    const engine = engineAt(train, e);
    const to = columns + ((<usize>e) << 3);
    const grip = engine.gripLimit;
    store<f64>(to, engine.setting);
    store<f64>(to + wide, engine.rimSpeed);
    store<f64>(to + 2 * wide, engine.railForce);
    store<f64>(to + 3 * wide, grip > 0 ? Math.abs(engine.railForce) / grip : 0);
    store<f64>(to + 4 * wide, engine.stallForce * Math.abs(engine.setting));
    store<f64>(to + 5 * wide, grip);
    store<f64>(to + 6 * wide, (asked * engine.drivenMass) / train.drivenMass);
  }
}
