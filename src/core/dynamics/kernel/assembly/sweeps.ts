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
import { Row, rowAt, Train } from './train';

/** Added to a whole number below 2^31 it leaves that number in the lowest bits. */
export const WHOLE: f64 = 4503599627370496;

/** Bytes from node to node in a vehicle's table (sine, cosine, bend, angle), as a shift, and in a joint's. */
const VEHICLE_NODE: usize = 5;
const JOINT_NODE: usize = 3;

/**
 * Looks up what the route asks at the step's middle, and eliminates the tridiagonal system from both ends to the middle
 * for the branches as chosen.
 */
export function sweepForward(train: Train): void {
  const zero = both(0);
  let c = zero;
  let d = zero;
  let here = train.rows;
  const end = here + <usize>train.rowCount * offsetof<Row>();
  while (here < end) {
    const row = changetype<Row>(here);
    const outer = changetype<Row>(here - offsetof<Row>());
    const inner = changetype<Row>(here + offsetof<Row>());
    const place = row.place;
    const speed = row.speed;

    // The two vehicles' tables, between the nodes either side.
    const x = sub(mul(add(place, mul(train.halfStep, speed)), train.toNode), train.firstNode);
    const k = f64x2.floor(smaller(larger(x, zero), train.lastNodes));
    const t = sub(x, k);
    const node = add(k, train.whole);
    const a = <usize>load<u32>(here, 0) + ((<usize>i32x4.extract_lane(node, 0)) << VEHICLE_NODE);
    const b = <usize>load<u32>(here, 8) + ((<usize>i32x4.extract_lane(node, 2)) << VEHICLE_NODE);
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
    const innerPlace = inner.place;
    const toMiddle = train.middleToNode;
    const y = sub(mul(add(place, innerPlace), toMiddle), train.firstNode);
    const m = f64x2.floor(smaller(larger(y, zero), train.lastNodes));
    const knot = add(m, train.whole);
    const qa = v128.load(<usize>load<u32>(here, 4) + ((<usize>i32x4.extract_lane(knot, 0)) << JOINT_NODE));
    const qb = v128.load(<usize>load<u32>(here, 12) + ((<usize>i32x4.extract_lane(knot, 2)) << JOINT_NODE));
    const q = firsts(qa, qb);
    const dq = sub(seconds(qa, qb), q);
    const extension = add(sub(sub(place, innerPlace), row.spacing), add(q, mul(dq, sub(y, m))));
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
    const grip = turnedBy(mul(slide, flange), add(outer.force, row.force), train.sign);
    const pull = sub(outer.rear, grip);
    const hold = add(front, grip);
    const pullSlope = mul(pull, outer.slope);
    const holdSlope = mul(hold, row.slope);
    const minusLower = mul(pullSlope, outer.front);
    const diagonal = add(add(row.diagonal, viscous), add(mul(pullSlope, outer.rear), mul(holdSlope, front)));
    const right = add(steady, sub(mul(pull, outer.base), mul(hold, base)));
    const pivot = div(train.one, sub(diagonal, mul(minusLower, c)));
    const free = row.free;
    d = either(where(free, mul(add(right, mul(minusLower, d)), pivot)), row.fixed);
    c = where(free, mul(mul(holdSlope, rear), pivot));
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
 * Substitutes back from the middle for the mean speeds, rates and forces. Returns whether every joint's stretch of law
 * and every vehicle's way of sliding hold for them.
 */
export function sweepBack(train: Train): bool {
  const h = both(train.step);
  const zero = both(0);
  const onto = both(2);
  let row = rowAt(train, train.rowCount - 1);
  const c = row.upper;
  const d = row.right;
  // The halves meet: each one's innermost speed in terms of the other's, which counts the other way.
  let mean = div(sub(d, mul(c, swapped(d))), sub(both(1), mul(c, swapped(c))));
  let inner = mirrored(mean);
  let wrong = zero;
  while (true) {
    const rate = sub(mul(row.front, mean), mul(row.rear, inner));
    const force = add(row.base, mul(row.slope, rate));
    row.mean = mean;
    row.rate = rate;
    row.force = force;
    const turned = below(mul(sub(mul(onto, mean), row.speed), row.slide), zero);
    wrong = either(wrong, either(turned, strays(row, rate, force, h)));
    if (changetype<usize>(row) === train.rows) break;
    row = changetype<Row>(changetype<usize>(row) - offsetof<Row>());
    inner = mean;
    mean = add(row.right, mul(row.upper, inner));
  }
  return !v128.any_true(wrong);
}

/**
 * Moves every vehicle by the step as solved, keeps the joints' peaks, and books the work of running friction and of the
 * joints' dampers where they acted all through the step. Returns whether some joint is past its release force.
 */
export function commit(train: Train): bool {
  const h = both(train.step);
  const onto = both(2);
  let rollingWork = train.rolling;
  let curveWork = train.curve;
  let flangeWork = train.flange;
  let damperWork = train.coupler;
  let outerForce = both(0);
  let past = both(0);
  let row = rowAt(train, 0);
  const end = train.rows + <usize>train.rowCount * offsetof<Row>();
  while (changetype<usize>(row) < end) {
    const mean = row.mean;
    const force = row.force;
    const moved = mul(h, mean);
    row.place = add(row.place, moved);
    row.speed = sub(mul(onto, mean), row.speed);
    const way = where(row.booked, moved);
    const path = mul(row.slide, way);
    rollingWork = add(rollingWork, add(mul(mul(row.viscous, mean), way), mul(row.rolling, path)));
    curveWork = add(curveWork, mul(row.curve, path));
    flangeWork = add(flangeWork, mul(mul(row.flange, abs(add(outerForce, force))), path));
    const rate = row.rate;
    damperWork = add(damperWork, mul(mul(row.damping, rate), mul(rate, h)));
    row.draftPeak = larger(row.draftPeak, force);
    row.buffPeak = smaller(row.buffPeak, force);
    past = either(past, below(row.release, force));
    outerForce = force;
    row = changetype<Row>(changetype<usize>(row) + offsetof<Row>());
  }
  // Beyond the last row stands its mirror image: the inner neighbours of the innermost vehicles.
  row.place = mirrored(rowAt(train, train.rowCount - 1).place);
  train.rolling = rollingWork;
  train.curve = curveWork;
  train.flange = flangeWork;
  train.coupler = damperWork;
  return v128.any_true(past);
}
