import { exp } from '../math/index.ts';
import { transferredWeight } from '../stock/index.ts';
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
  return drive.slidingAdhesion + (drive.adhesion - drive.slidingAdhesion) * exp(-Math.abs(slip) / drive.slipScale);
}

/**
 * Normal force on the driven wheels, N, with what the drawbar pull takes off them or puts on.
 *
 * @param weighing cosine of the grade times gravity, m/s²
 * @param pull net drawbar pull towards the engine's rear, N
 */
export function drivenNormalForce(drive: Drive, weighing: number, pull: number): number {
  return Math.max(drive.drivenMass * weighing - transferredWeight(drive, pull), 0);
}
