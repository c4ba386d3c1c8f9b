import type { Drive } from '../stock/types.ts';

/** Force of the motor at the rim by its straight line, N: `stallForce·setting - (stallForce/freeSpeed)·rim`. */
export function motorForce(drive: Drive, setting: number, rim: number): number {
  return drive.stallForce * setting - (drive.stallForce / drive.freeSpeed) * rim;
}

/** Speed the rotor would run at with nothing to pull, at the rim, m/s. */
export const settingSpeed = (drive: Drive, setting: number): number => drive.freeSpeed * setting;
