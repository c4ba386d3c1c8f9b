/* Steps a train: sweeps until every branch as chosen is borne out, and watches for what its driver has to know. */
import { beginEngine, bookEngine, engineAt, settleEngine, takeBalance } from './engines';
import { settleJoints, straightenJoints } from './joints';
import { turnKnobs } from './knobs';
import { Mode, signOf } from './motor';
import { both } from './pairs';
import { keepEnds } from './read';
import { ASTRAY, locate, NOW, PAST, START, sweepBack, sweepForward } from './sweeps';
import { countOf, halfAt, jointHalf, Train } from './train';
import { settleVehicles, standStill } from './vehicles';

/** Sweeps after which branch choices change one at a time, and after which the step is taken as it is. */
const CAREFUL_SWEEPS: i32 = 12;
const MAX_SWEEPS: i32 = 80;

/**
 * Takes up to `most` steps, and stops after the one in which something happens that wants attention: the leading origin
 * reaches `reach` or the last falls behind `back`, m; an engine's wheels slip; one has been asked to move and has not at
 * `crawl` m/s for longer than `patience`, s; a joint lets go. Returns the steps taken.
 */
export function advance(train: Train, most: i32, reach: f64, back: f64, crawl: f64, patience: f64): i32 {
  const ahead = halfAt(train, 0);
  const behind = halfAt(train, train.count - 1);
  const count = countOf(train, train.count - 1);
  let taken = 0;
  locate(train, NOW);
  while (taken < most) {
    stepOnce(train);
    taken++;
    const slips = watchEngines(train, crawl);
    if (slips || train.letGo >= 0 || lostPatience(train, patience)) break;
    if (ahead.place >= reach || (count * behind.place < back && count * behind.speed < 0)) break;
  }
  keepEnds(train);
  return taken;
}

/** Counts the steps an engine is stuck for. Returns whether wheels slip. */
function watchEngines(train: Train, crawl: f64): bool {
  let slips = false;
  let stuck = false;
  for (let e = 0; e < train.engineCount; e++) {
    const engine = engineAt(train, e);
    if (engine.mode === Mode.slip) slips = true;
    if (engine.setting !== 0 && engine.speed * signOf(engine.setting) < crawl) stuck = true;
  }
  train.stuck = stuck && !train.turning ? train.stuck + 1 : 0;
  return slips;
}

function lostPatience(train: Train, patience: f64): bool {
  const steps = f64(train.steps);
  return steps * train.step - (steps - train.stuck) * train.step > patience;
}

function stepOnce(train: Train): void {
  turnKnobs(train);
  train.steps++;
  for (let e = 0; e < train.engineCount; e++) beginEngine(train, engineAt(train, e));
  train.startRolling = train.rolling;
  train.startCurve = train.curve;
  train.startFlange = train.flange;
  train.startCoupler = train.coupler;
  sweepForward(train, NOW);
  train.fold = both(0);
  let seen: i32;
  for (let sweep = 1; ; sweep++) {
    seen = sweepBack(train);
    const right = !(seen & ASTRAY);
    const careful = sweep > CAREFUL_SWEEPS;
    const settled = right && train.resting === 0 ? true : settle(train, careful);
    const driven = settled || !careful ? settleEngines(train) : false;
    train.sweeps++;
    if (settled && driven) {
      // A joint that bends without another force has its damper's work booked apart.
      if (!right) seen = sweepBack(train);
      break;
    }
    if (sweep === MAX_SWEEPS) {
      train.unsettled++;
      for (let e = 0; e < train.engineCount; e++) takeBalance(engineAt(train, e));
      break;
    }
    locate(train, START);
    sweepForward(train, START);
  }
  train.fold = i64x2.splat(-1);
  for (let e = 0; e < train.engineCount; e++) bookEngine(train, engineAt(train, e));
  if (train.resting > 0) standStill(train);
  if (train.bending > 0) straightenJoints(train);
  train.letGo = seen & PAST ? firstPastRelease(train) : -1;
}

function settle(train: Train, careful: bool): bool {
  const joints = settleJoints(train);
  if (careful && !joints) return false;
  return settleVehicles(train, careful) && joints;
}

function settleEngines(train: Train): bool {
  let settled = true;
  for (let e = 0; e < train.engineCount; e++) if (settleEngine(train, engineAt(train, e))) settled = false;
  return settled;
}

function firstPastRelease(train: Train): f64 {
  for (let j = 0; j < train.count - 1; j++) {
    const half = jointHalf(train, j);
    if (half.force > half.release) return f64(j);
  }
  return -1;
}
