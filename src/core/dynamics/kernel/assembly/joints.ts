/*
 * Which straight stretch of its law a joint is on. Nearly always it stays there all through a step: then its force is one
 * line in its rate, and the sweeps need no more. Where it touches, lets go or meets its second stage within the step the
 * force bends, and is linearised anew at every sweep (Newton).
 */
import { AveragedForce, averagedSide, springEnergy } from '../../contactSide';
import { both } from './pairs';
import { strays } from './sweeps';
import { Half, Joint, jointAt, jointHalf, rowAt, Train } from './train';

/** Newton stops when a bent joint's force agrees with its linearisation to this share, or this much, N. */
const FORCE_SHARE: f64 = 1e-10;
const FORCE_FLOOR: f64 = 1e-12;

const draft = new AveragedForce();
const buff = new AveragedForce();

/** Puts the stretch in place: force = k·e + offset + damping·rate from extension `low` to `high`, while it acts `way`. */
function lay(train: Train, j: i32, k: f64, offset: f64, damping: f64, low: f64, high: f64, way: f64): void {
  const half = jointHalf(train, j);
  layLane(half, train.step, k, offset, damping, low, high, way);
  half.damping = damping;
  if (j !== train.rowCount - 1) return;
  // The middle joint stands in both lanes, but its work is booked once.
  const twin = changetype<Half>(changetype<usize>(half) + 8);
  layLane(twin, train.step, k, offset, damping, low, high, way);
  twin.damping = 0;
}

function layLane(half: Half, h: f64, k: f64, offset: f64, damping: f64, low: f64, high: f64, way: f64): void {
  half.stiffness = k;
  half.offset = offset;
  half.slope = 0.5 * k * h + damping;
  half.swing = 0.5 * k * h;
  half.low = low;
  half.high = high;
  half.way = way;
}

/** Average force over the step and its slope in the rate, into `draft`. */
function average(joint: Joint, e0: f64, rate: f64, h: f64): void {
  const c = joint.damping;
  averagedSide(joint.draftStiffness, joint.draftFrom, joint.draftSecond, c, e0 - joint.draftPlay, rate, h, draft);
  averagedSide(joint.buffStiffness, joint.buffFrom, joint.buffSecond, c, -e0 - joint.buffPlay, -rate, h, buff);
  draft.force -= buff.force;
  draft.slope += buff.slope;
}

function stored(joint: Joint, e: f64): f64 {
  return (
    springEnergy(joint.draftStiffness, joint.draftFrom, joint.draftSecond, e - joint.draftPlay) +
    springEnergy(joint.buffStiffness, joint.buffFrom, joint.buffSecond, -e - joint.buffPlay)
  );
}

/** Whether the stretch as laid holds from extension e0 over a step at this rate and average force. */
function holds(half: Half, e0: f64, rate: f64, force: f64, h: f64): bool {
  const e1 = e0 + rate * h;
  return (
    e0 >= half.low &&
    e1 >= half.low &&
    e0 <= half.high &&
    e1 <= half.high &&
    force * half.way >= Math.abs(half.swing * rate)
  );
}

/** Lays the stretch of joint j that its extension is in, or, where none holds over the step at this rate, a tangent to its bent law. */
export function chooseStretch(train: Train, j: i32, e0: f64, rate: f64): void {
  const joint = jointAt(train, j);
  const h = train.step;
  const e = e0 + 0.5 * rate * h;
  const c = joint.damping;
  const draftKnee = joint.draftPlay + joint.draftFrom;
  const buffKnee = joint.buffPlay + joint.buffFrom;
  if (joint.bent) {
    joint.bent = 0;
    train.bending--;
  }
  if (e > draftKnee) {
    const k = joint.draftSecond;
    lay(train, j, k, joint.draftStiffness * joint.draftFrom - k * draftKnee, c, draftKnee, Infinity, 1);
  } else if (e > joint.draftPlay) {
    const k = joint.draftStiffness;
    lay(train, j, k, -k * joint.draftPlay, c, joint.draftPlay, draftKnee, 1);
  } else if (e >= -joint.buffPlay) {
    lay(train, j, 0, 0, 0, -joint.buffPlay, joint.draftPlay, 0);
  } else if (e >= -buffKnee) {
    const k = joint.buffStiffness;
    lay(train, j, k, k * joint.buffPlay, c, -buffKnee, -joint.buffPlay, -1);
  } else {
    const k = joint.buffSecond;
    lay(train, j, k, k * buffKnee - joint.buffStiffness * joint.buffFrom, c, -Infinity, -buffKnee, -1);
  }
  const half = jointHalf(train, j);
  const force = half.stiffness * e0 + half.offset + half.slope * rate;
  if (holds(half, e0, rate, force, h)) return;
  average(joint, e0, rate, h);
  lay(train, j, 0, draft.force - draft.slope * rate, draft.slope, Infinity, -Infinity, 0);
  bend(train, joint, half);
}

/** Marks a joint whose work over the step is to be booked, and whose stretch is to be chosen anew, after it. */
function bend(train: Train, joint: Joint, half: Half): void {
  half.damping = 0;
  if (joint.bent) return;
  joint.bent = 1;
  train.bending++;
}

/** Checks every joint's stretch against the solution of a sweep; true when all give the force the law gives. */
export function settleJoints(train: Train): bool {
  const h = both(train.step);
  const last = train.rowCount - 1;
  let settled = true;
  for (let p = 0; p <= last; p++) {
    const row = rowAt(train, p);
    const astray = strays(row, row.rate, row.force, h);
    if (!v128.any_true(astray)) continue;
    if (i64x2.extract_lane(astray, 0) && !settleJoint(train, p)) settled = false;
    if (i64x2.extract_lane(astray, 1) && p < last && !settleJoint(train, 2 * last - p)) settled = false;
  }
  return settled;
}

/** Whether a joint that has left its stretch has the force its law gives all the same; if not, it is linearised anew. */
function settleJoint(train: Train, j: i32): bool {
  const joint = jointAt(train, j);
  const half = jointHalf(train, j);
  average(joint, half.extension, half.rate, train.step);
  if (Math.abs(draft.force - half.force) <= FORCE_FLOOR + FORCE_SHARE * Math.abs(draft.force)) {
    // Springs of one stiffness and no slack: the line holds on, but as another stretch.
    bend(train, joint, half);
    return true;
  }
  chooseStretch(train, j, half.extension, half.rate);
  return false;
}

/** After a step: books what the dampers of bent joints took, and lays the stretches they have come to. */
export function straightenJoints(train: Train): void {
  const h = train.step;
  let damperWork: f64 = 0;
  for (let j = 0; j < train.count - 1; j++) {
    const joint = jointAt(train, j);
    if (!joint.bent) continue;
    const half = jointHalf(train, j);
    const e0 = half.extension;
    const e1 = e0 + half.rate * h;
    damperWork += half.force * half.rate * h - (stored(joint, e1) - stored(joint, e0));
    chooseStretch(train, j, e1, half.rate);
  }
  train.coupler = f64x2.replace_lane(train.coupler, 0, f64x2.extract_lane(train.coupler, 0) + damperWork);
}
