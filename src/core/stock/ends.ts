import type { Vehicle, VehicleEnd } from './types.ts';

/** Which end of a vehicle is meant. */
export type End = 'front' | 'rear';

/** Distance from a vehicle's origin (midway between its running points) to its front body end, m. */
export const frontReach = (vehicle: Vehicle): number => vehicle.pivotSpacing / 2 + vehicle.frontOverhang;

/** Distance from a vehicle's origin to its rear body end, m, positive. */
export const rearReach = (vehicle: Vehicle): number => vehicle.pivotSpacing / 2 + vehicle.rearOverhang;

/**
 * Where the shank of an end's coupling turns, in the vehicle's own axes on straight level track (m): `ahead` is negative at
 * the rear. The pivot is taken at the height of the head it carries. A bogie-mounted pivot leaves this place in curves.
 */
export function couplerPivot(vehicle: Vehicle, end: End): { readonly ahead: number; readonly up: number } {
  const { coupling } = vehicle[end];
  const ahead = end === 'front' ? frontReach(vehicle) - coupling.pivotInset : coupling.pivotInset - rearReach(vehicle);
  return { ahead, up: coupling.headHeight };
}

/** How far buffer faces stand beyond the body end, m; 0 where there are none. */
const bufferLength = (end: VehicleEnd): number => end.buffers?.length ?? 0;

/** Length over buffers, m; the body length where there are none. */
export const lengthOverBuffers = (vehicle: Vehicle): number =>
  frontReach(vehicle) + rearReach(vehicle) + bufferLength(vehicle.front) + bufferLength(vehicle.rear);
