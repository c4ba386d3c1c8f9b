import type { Vec3 } from '../../core/math/vec3.ts';
import { couplerPivot, type End } from '../../core/stock/index.ts';
import type { Placement, Vehicle } from '../../core/stock/types.ts';

/** Where half a coupling is drawn: its pivot in the room (m), the way its shank points, left and up of it. */
export interface CouplingPlace {
  readonly pivot: Vec3;
  readonly out: Vec3;
  readonly left: Vec3;
  readonly up: Vec3;
}

/** The axis of what carries an end's coupling: the bogie where it is mounted there, else the body. */
function carrierAxis(vehicle: Vehicle, placed: Placement, end: End): Vec3 {
  if (vehicle[end].coupling.mount !== 'bogie' || !vehicle.bogies) return placed.ahead;
  return end === 'front' ? placed.frontTangent : placed.rearTangent;
}

/** The pivot of an end's coupling in the room, m, at the height of its head. */
export function pivotPlace(vehicle: Vehicle, placed: Placement, end: End): Vec3 {
  const { ahead, up } = couplerPivot(vehicle, end);
  const axis = carrierAxis(vehicle, placed, end);
  const point = ((end === 'front' ? 1 : -1) * vehicle.pivotSpacing) / 2;
  const beyond = ahead - point;
  const level = Math.hypot(axis[0], axis[1]);
  return [
    placed.origin[0] + point * placed.ahead[0] + beyond * axis[0] - (up * axis[2] * axis[0]) / level,
    placed.origin[1] + point * placed.ahead[1] + beyond * axis[1] - (up * axis[2] * axis[1]) / level,
    placed.origin[2] + point * placed.ahead[2] + beyond * axis[2] + up * level,
  ];
}

/**
 * Places an end's coupling: in plan it points to the mate's pivot (along its own vehicle when there is no mate); in
 * height it lies in the rail plane of what carries it, as the mechanics reckon heads.
 */
export function couplingPlace(vehicle: Vehicle, placed: Placement, end: End, mate: Vec3 | null): CouplingPlace {
  const pivot = pivotPlace(vehicle, placed, end);
  const axis = carrierAxis(vehicle, placed, end);
  const way = end === 'front' ? 1 : -1;
  const level = Math.hypot(axis[0], axis[1]);
  let x = (way * axis[0]) / level;
  let y = (way * axis[1]) / level;
  if (mate !== null) {
    const dx = mate[0] - pivot[0];
    const dy = mate[1] - pivot[1];
    const plan = Math.hypot(dx, dy);
    if (plan > 0) {
      x = dx / plan;
      y = dy / plan;
    }
  }
  const slope = (axis[2] / level) * ((x * axis[0] + y * axis[1]) / level);
  const size = Math.hypot(1, slope);
  return {
    pivot,
    out: [x / size, y / size, slope / size],
    left: [-y, x, 0],
    up: [(-slope * x) / size, (-slope * y) / size, 1 / size],
  };
}
