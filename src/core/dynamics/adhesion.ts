import type { Drive } from '../stock/types.ts';

/**
 * Wheel-rail coefficient at a slip speed: `sliding + (adhesion - sliding)·exp(-slip/scale)`.
 *
 * It falls as the wheels spin faster, so wheels break loose at the full coefficient and find their grip again only
 * where the motor needs less than the lower one. The exponential form is this project's choice: no measured law at
 * model scale was found.
 *
 * @param slip difference of rim and vehicle speed, m/s, either sign
 */
export function frictionAtSlip(drive: Drive, slip: number): number {
  return drive.slidingAdhesion + (drive.adhesion - drive.slidingAdhesion) * Math.exp(-Math.abs(slip) / drive.slipScale);
}

/**
 * Normal force on the driven wheels, N, with what the drawbar pull takes off them.
 *
 * @param share cosine of the grade times gravity, m/s²
 * @param pull net drawbar pull backward on the engine, N: a moment pull·height about the wheelbase lifts the leading axles
 */
export function drivenNormalForce(drive: Drive, share: number, pull: number): number {
  const moved = (drive.transferShare * Math.max(pull, 0) * drive.drawbarHeight) / drive.drivenWheelbase;
  return Math.max(drive.drivenMass * share - moved, 0);
}
