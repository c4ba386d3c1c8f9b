import type { Drive } from './types.ts';

/**
 * Weight (N) that a drawbar pull (N, draft positive) takes off the driven wheels: the moment F·h about the rail is borne by the wheelbase
 * the wheels stand on, times the share of it that leaves the driven ones. Negative when it presses them down.
 * Source: moment equilibrium of the locomotive, ΔN = F·h/wheelbase.
 */
export function transferredWeight(drive: Drive, pull: number): number {
  if (drive.transferShare === 0) return 0;
  return (drive.transferShare * pull * drive.drawbarHeight) / drive.drivenWheelbase;
}
