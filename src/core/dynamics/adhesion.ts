import { transferredWeight } from '../stock/index.ts';
import type { Drive } from '../stock/types.ts';

/**
 * Normal force on the driven wheels, N, with what the drawbar pull takes off them or puts on.
 *
 * @param weighing cosine of the grade times gravity, m/s²
 * @param pull net drawbar pull towards the engine's rear, N
 */
export function drivenNormalForce(drive: Drive, weighing: number, pull: number): number {
  return Math.max(drive.drivenMass * weighing - transferredWeight(drive, pull), 0);
}
