/*
 * The step's three passes over a train's rows. Derivation: docs/mechanics/solver.md. In these loops the outer neighbour is
 * the one nearer the end of its half of the train, the inner one the nearer to the middle.
 */
import {
  abs,
  add,
  below,
  between,
  both,
  div,
  either,
  firsts,
  larger,
  mirrored,
  mul,
  seconds,
  smaller,
  sub,
  swapped,
  turnedBy,
  where,
} from './pairs';
import { Half, Row, rowAt, Train } from './train';

/** Added to a whole number below 2^31 it leaves that number in the lowest bits. */
export const WHOLE: f64 = 4503599627370496;

/** Where a row's place and speed stand: at the step's start, and as they are now. */
export const START: usize = offsetof<Row>('startPlace');
export const NOW: usize = offsetof<Row>('place');

/** What `sweepBack` tells. */
export const ASTRAY: i32 = 1;
export const PAST: i32 = 2;

/** Bytes from node to node in a vehicle's table (sine, cosine, bend, angle), as a shift, and in a joint's. */
const VEHICLE_NODE: i32 = 5;
const JOINT_NODE: i32 = 3;

/** Finds the nodes of the route tables that a row's vehicles stand at in the middle of a step, and its joints at its start. */
function locateRow(train: Train, row: Row, place: v128, speed: v128, innerPlace: v128): void {
  const zero = both(0);
  const x = sub(mul(add(place, mul(train.halfStep, speed)), train.toNode), train.firstNode);
  const k = f64x2.floor(smaller(larger(x, zero), train.lastNodes));
  const y = sub(mul(add(place, innerPlace), train.middleToNode), train.firstNode);
  const m = f64x2.floor(smaller(larger(y, zero), train.lastNodes));
  row.share = sub(x, k);
  row.middleShare = sub(y, m);
  const node = i64x2.shl(add(k, train.whole), VEHICLE_NODE);
  const knot = i64x2.shl(add(m, train.whole), JOINT_NODE);
  row.nodes = i32x4.add(row.tables, v128.shuffle<i32>(node, knot, 0, 4, 2, 6));
}

/** The same for every row of a train from its places and speeds, START or NOW. */
export function locate(train: Train, from: usize): void {
  let here = train.rows;
  const end = here + <usize>train.rowCount * offsetof<Row>();
  while (here < end) {
    const at = here + from;
    locateRow(train, changetype<Row>(here), v128.load(at), v128.load(at, 16), v128.load(at, offsetof<Row>()));
    here += offsetof<Row>();
  }
}

/** The same for the row of one vehicle, as it is now. */
export function locateAgain(train: Train, half: Half): void {
  const row = changetype<Row>(changetype<usize>(half) & ~15);
  const inner = changetype<Row>(changetype<usize>(row) + offsetof<Row>());
  locateRow(train, row, row.place, row.speed, inner.place);
}

/**
 * Looks up what the route asks at the step's middle, and eliminates the tridiagonal system from both ends to the middle
 * for the branches as chosen.
 */
export function sweepForward(train: Train, from: usize): void {
  const fold = train.fold;
  const beyond = train.rows + <usize>train.rowCount * offsetof<Row>();
  changetype<Row>(beyond).startPlace = v128.load(beyond + from);
  let c = both(0);
  let d = both(0);
  let here = train.rows;
  const end = here + <usize>train.rowCount * offsetof<Row>();
  while (here < end) {
    const row = changetype<Row>(here);
    const outer = changetype<Row>(here - offsetof<Row>());
    const at = here + from;
    const place = v128.load(at);
    const speed = v128.load(at, 16);
    row.startPlace = place;
    row.startSpeed = speed;

    // The two vehicles' tables, between the nodes either side.
    const t = row.share;
    const a = <usize>load<u32>(here, offsetof<Row>('nodes'));
    const b = <usize>load<u32>(here, offsetof<Row>('nodes') + 8);
    const ta = firsts(t, t);
    const tb = seconds(t, t);
    const sineCosineA = between(v128.load(a, 0), v128.load(a, 32), ta);
    const sineCosineB = between(v128.load(b, 0), v128.load(b, 32), tb);
    const bendAngleA = between(v128.load(a, 16), v128.load(a, 48), ta);
    const bendAngleB = between(v128.load(b, 16), v128.load(b, 48), tb);
    const cosine = seconds(sineCosineA, sineCosineB);
    const grade = mul(row.lift, firsts(sineCosineA, sineCosineB));
    const rolling = mul(row.dry, cosine);
    const viscous = mul(row.wet, cosine);
    const curve = mul(row.weight, firsts(bendAngleA, bendAngleB));
    const flange = mul(train.flangeFriction, seconds(bendAngleA, bendAngleB));
    row.grade = grade;
    row.rolling = rolling;
    row.viscous = viscous;
    row.curve = curve;
    row.flange = flange;
    const slide = row.slide;
    const steady = sub(add(mul(row.inertia, speed), row.push), add(grade, mul(slide, add(rolling, curve))));

    // The two inner joints: extension, levers, and force as a straight line in the rate.
    const innerPlace = v128.load(at, offsetof<Row>());
    const toMiddle = train.middleToNode;
    const qa = v128.load(<usize>load<u32>(here, offsetof<Row>('nodes') + 4));
    const qb = v128.load(<usize>load<u32>(here, offsetof<Row>('nodes') + 12));
    const q = firsts(qa, qb);
    const dq = sub(seconds(qa, qb), q);
    const extension = add(sub(sub(place, innerPlace), row.spacing), add(q, mul(dq, row.middleShare)));
    const tilt = mul(dq, toMiddle);
    const one = train.one;
    const front = add(one, tilt);
    const rear = sub(one, tilt);
    const base = add(mul(row.stiffness, extension), row.offset);
    row.extension = extension;
    row.front = front;
    row.rear = rear;
    row.base = base;

    // The vehicle's balance, diagonal·V = right + minusLower·V(outer) + hold·slope·rear·V(inner), becomes V = d + c·V(inner).
    const force = row.force;
    const seen = where(fold, force);
    row.draftPeak = larger(row.draftPeak, seen);
    row.buffPeak = smaller(row.buffPeak, seen);
    const grip = turnedBy(mul(slide, flange), add(outer.force, force), train.sign);
    const pull = sub(outer.rear, grip);
    const hold = add(front, grip);
    const pullSlope = mul(pull, outer.slope);
    const holdSlope = mul(hold, row.slope);
    const minusLower = mul(pullSlope, outer.front);
    const diagonal = add(add(row.diagonal, viscous), add(mul(pullSlope, outer.rear), mul(holdSlope, front)));
    const right = add(steady, sub(mul(pull, outer.base), mul(hold, base)));
    const free = row.free;
    const lead = where(free, mul(holdSlope, rear));
    const rest = sub(diagonal, mul(minusLower, c));
    d = either(where(free, div(add(right, mul(minusLower, d)), rest)), row.fixed);
    c = div(lead, rest);
    row.upper = c;
    row.right = d;
    here += offsetof<Row>();
  }
}

/**
 * Lanes whose joint leaves its stretch of law within the step: the extension passes an end of it, or the force would
 * turn at its start or end, which are half of what it changes by either side of its average.
 */
export function strays(row: Row, rate: v128, force: v128, h: v128): v128 {
  const e0 = row.extension;
  const e1 = add(e0, mul(rate, h));
  const beyond = either(below(smaller(e0, e1), row.low), below(row.high, larger(e0, e1)));
  return either(beyond, below(mul(force, row.way), abs(mul(row.swing, rate))));
}

/**
 * Substitutes back from the middle for the mean speeds, rates and forces, and moves every vehicle by the step as solved: places and speeds at its
 * end, where that is in the tables, and the work of running friction and of the joints' dampers as far as they act all through the step. Returns
 * ASTRAY when a joint's stretch of law or a vehicle's way of sliding does not hold for them, and PAST when a joint is past its release force.
 */
export function sweepBack(train: Train): i32 {
  const h = both(train.step);
  const zero = both(0);
  const onto = both(2);
  // What adds up stands in memory and not in registers, of which there are fewer: so each row's numbers are used up one after the other.
  train.rolling = train.startRolling;
  train.curve = train.startCurve;
  train.flange = train.startFlange;
  train.coupler = train.startCoupler;
  train.wrong = zero;
  train.past = zero;
  let row = rowAt(train, train.rowCount - 1);
  const c = row.upper;
  const d = row.right;
  // The halves meet: each one's innermost speed in terms of the other's, which counts the other way.
  let mean = div(sub(d, mul(c, swapped(d))), sub(both(1), mul(c, swapped(c))));
  let inner = mirrored(mean);
  // Beyond the last row stands its mirror image: the inner neighbours of the innermost vehicles.
  let innerPlace = mirrored(add(row.startPlace, mul(h, mean)));
  rowAt(train, train.rowCount).place = innerPlace;
  let innerForce = zero;
  let innerFlange = zero;
  while (true) {
    row.mean = mean;
    const place = add(row.startPlace, mul(h, mean));
    row.place = place;
    const speed = sub(mul(onto, mean), row.startSpeed);
    row.speed = speed;
    locateRow(train, row, place, speed, innerPlace);
    const rate = sub(mul(row.front, mean), mul(row.rear, inner));
    row.rate = rate;
    const force = add(row.base, mul(row.slope, rate));
    row.force = force;
    const slide = row.slide;
    train.wrong = either(train.wrong, either(below(mul(speed, slide), zero), strays(row, rate, force, h)));
    train.past = either(train.past, below(row.release, force));
    train.coupler = add(train.coupler, mul(mul(row.damping, rate), mul(rate, h)));
    train.flange = add(train.flange, mul(innerFlange, abs(add(force, innerForce))));
    const way = where(row.booked, mul(h, mean));
    const path = mul(slide, way);
    train.rolling = add(train.rolling, add(mul(mul(row.viscous, mean), way), mul(row.rolling, path)));
    train.curve = add(train.curve, mul(row.curve, path));
    innerFlange = mul(row.flange, path);
    innerForce = force;
    innerPlace = place;
    if (changetype<usize>(row) === train.rows) break;
    row = changetype<Row>(changetype<usize>(row) - offsetof<Row>());
    inner = mean;
    mean = add(row.right, mul(row.upper, inner));
  }
  train.flange = add(train.flange, mul(innerFlange, abs(innerForce)));
  return (v128.any_true(train.wrong) ? ASTRAY : 0) | (v128.any_true(train.past) ? PAST : 0);
}
