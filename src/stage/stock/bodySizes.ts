import { frontReach, rearReach } from '../../core/stock/index.ts';
import type { Vehicle } from '../../core/stock/types.ts';

/** Where the parts of a vehicle lie in its own axes, m: x ahead of the origin, heights above the rail top. */
export interface BodySizes {
  readonly front: number;
  readonly rear: number;
  readonly halfWidth: number;
  readonly top: number;
  /** Floor of the body, and the underside of the frame that carries it. */
  readonly floor: number;
  readonly frame: number;
  /** What an invented builder would call it. */
  readonly form: 'coach' | 'van' | 'open' | 'centre-cab' | 'tank-engine' | 'tender';
}

/** Floor above the wheel's top, and depth of the frame, as shares of the wheel's radius. */
const floorOverWheels = 0.35;
const frameDepth = 0.62;

/** A wagon lower than this share of its width is an open one. */
const openBelow = 1;

export function bodySizes(vehicle: Vehicle): BodySizes {
  const r = vehicle.wheelRadius;
  const buffer = vehicle.front.buffers ?? vehicle.rear.buffers;
  const wanted = Math.max((2 + floorOverWheels) * r, (buffer?.height ?? 0) + 0.25 * r);
  // Low vehicles keep at least half of their height for the body.
  const floor = Math.min(wanted, 0.5 * vehicle.bodyHeight);
  return {
    front: frontReach(vehicle),
    rear: -rearReach(vehicle),
    halfWidth: vehicle.bodyWidth / 2,
    top: vehicle.bodyHeight,
    floor,
    frame: floor - frameDepth * r,
    form: formOf(vehicle),
  };
}

function formOf(vehicle: Vehicle): BodySizes['form'] {
  if (vehicle.kind === 'locomotive') return vehicle.bogies ? 'centre-cab' : 'tank-engine';
  if (vehicle.kind === 'tender') return 'tender';
  if (vehicle.kind === 'coach') return 'coach';
  return vehicle.bodyHeight < openBelow * vehicle.bodyWidth ? 'open' : 'van';
}
