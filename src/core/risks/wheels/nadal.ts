import { defaultForceModel } from '../../dynamics/index.ts';
import { tan } from '../../math/index.ts';

/**
 * Angle of the flange to the level where it bears on the rail, rad, of a vehicle that says nothing of its own: 70° (60° to 75°). An assumption: model
 * wheels are seldom measured, and worn or coarse ones lie below.
 */
export const flangeAngle = (70 * Math.PI) / 180;

/** Wheel on rail: 0.20 (0.10 to 0.30), the coefficient that curve drag is computed with. */
export const wheelFriction = defaultForceModel.curveFriction;

/**
 * Sideways over vertical force at which a flange climbs the rail: (tan δ - μ)/(1 + μ·tan δ), δ the flange's angle (rad), μ the
 * friction there; none where δ is within the angle of friction. It supposes a wheel that runs hard against the rail and slides down it; at a
 * small angle of attack a wheel bears more, so the limit is conservative there. Source: Nadal's balance of one wheel on an inclined contact.
 */
export function nadalQuotient(angle: number, friction: number): number {
  const slope = tan(angle);
  return Math.max(0, (slope - friction) / (1 + friction * slope));
}
