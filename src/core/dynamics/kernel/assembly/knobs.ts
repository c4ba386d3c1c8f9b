/*
 * The driver's hand on each engine between one order and the next: a setting on its way to another, or a load-compensated
 * controller that holds a speed.
 */
import { engineAt } from './engines';
import { Engine, Knob } from './motor';
import { Train } from './train';

/** A controller that changes its setting more slowly than this has settled, 1/s: the whole range would take it 1000 s. */
const SETTLED_RATE: f64 = 1e-3;

/** Turns every engine's knob for the step to come. */
export function turnKnobs(train: Train): void {
  // The setting at the step's middle: a ramp is then followed to second order.
  const time = f64(train.steps) * train.step + 0.5 * train.step;
  let turning = false;
  for (let e = 0; e < train.engineCount; e++) {
    const engine = engineAt(train, e);
    if (engine.knob === Knob.still) continue;
    const ramp = engine.ramp;
    const share = ramp > 0 ? Math.min((time - engine.rampStart) / ramp, 1) : 1;
    const asked = engine.rampFrom + share * (engine.rampTo - engine.rampFrom);
    if (share < 1) turning = true;
    if (engine.knob === Knob.hold) {
      if (compensate(engine, asked, train.step)) turning = true;
    } else {
      engine.setting = asked;
      if (share >= 1) engine.knob = Knob.still;
    }
  }
  train.turning = i32(turning);
}

/**
 * Load-compensated control of one engine for a step: setting = v/v_free + p·e + ∫i·e dt with e the share of free speed that
 * the rim lacks, between nothing and the most it may use, the way it was ordered. Measured at the rim, as back-EMF measures
 * the motor: spinning wheels look like speed held. Against the limits the integral stops growing (anti-windup). Returns
 * whether the setting still moves.
 */
function compensate(engine: Engine, asked: f64, elapsed: f64): bool {
  if (asked === 0) {
    // Stopped: the motor is cut, or what the integral holds would go on pushing at a standing train.
    engine.integral = 0;
    engine.setting = 0;
    return false;
  }
  const way = engine.heldWay;
  const most = engine.most;
  const free = engine.freeSpeed;
  const lack = (asked - engine.rimSpeed) / free;
  const sum = engine.integral + engine.integralGain * lack * elapsed;
  const wanted = way * (asked / free + engine.gain * lack + sum);
  const setting = way * Math.min(Math.max(wanted, 0), most);
  const beyond = way * setting !== wanted;
  // Beyond a limit only what leads back is kept.
  if (!beyond || (wanted > most ? way * lack < 0 : way * lack > 0)) engine.integral = sum;
  const moves = Math.abs(setting - engine.setting) > SETTLED_RATE * elapsed;
  engine.setting = setting;
  return moves;
}
