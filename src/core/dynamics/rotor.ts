import type { Drive } from '../stock/types.ts';

/** Share of the stall force that gears and brushes take from a rotor running faster than its setting. An assumption. */
const COAST_DRAG_SHARE = 0.1;

/** Force of the motor at the rim by its straight line, N: `stallForce·setting - (stallForce/freeSpeed)·rim`. */
export function motorForce(drive: Drive, setting: number, rim: number): number {
  return drive.stallForce * setting - (drive.stallForce / drive.freeSpeed) * rim;
}

/** Speed the rotor would run at with nothing to pull, at the rim, m/s. */
export const settingSpeed = (drive: Drive, setting: number): number => drive.freeSpeed * setting;

/** Drag on a rotor that runs faster than its setting asks, N, along the direction it opposes. */
export function coastDrag(drive: Drive, setting: number, rim: number): number {
  if (!drive.worm || rim === 0) return 0;
  const way = Math.sign(rim);
  const over = rim * way > Math.max(settingSpeed(drive, setting) * way, 0);
  return over ? way * COAST_DRAG_SHARE * drive.stallForce : 0;
}

/**
 * Rim speed at the end of a step of a rotor that feels only its motor and a rail force `load`, m/s.
 *
 * Trapezoidal in the motor line; never passes the speed it is falling to, so a worm comes to its setting, and at
 * setting 0 to rest, in finite time.
 */
export function rotorAfter(drive: Drive, setting: number, rim: number, load: number, h: number): number {
  const line = drive.stallForce / drive.freeSpeed;
  const inertia = drive.rotatingMass / h;
  const drag = coastDrag(drive, setting, rim);
  const next = (inertia * rim + drive.stallForce * setting - 0.5 * line * rim - drag - load) / (inertia + 0.5 * line);
  if (!drive.worm) return next;
  const way = Math.sign(rim) || Math.sign(setting);
  if (way === 0) return 0;
  const asked = Math.max(settingSpeed(drive, setting) * way, 0);
  const was = rim * way;
  const now = next * way;
  if (load === 0 && (was - asked) * (now - asked) < 0) return asked * way;
  return Math.max(now, 0) * way;
}
