import { couplerPivot } from './ends.ts';
import type { Coupling, Joint, Vehicle } from './types.ts';

/** Two springs, or two dampers, one behind the other: 1/(1/a + 1/b). Infinity is a rigid half, 0 takes all force away. */
const inSeries = (a: number, b: number): number => 1 / (1 / a + 1 / b);

/**
 * Joins the rear coupling of one vehicle to the front coupling of the next: stiffness (N/m) and damping (N·s/m) in
 * series, reach and slack (m) added, release (N) the weaker of the two. A half may be rigid (Infinity); two rigid halves
 * make a rigid joint.
 */
export function makeJoint(rearHalf: Coupling, frontHalf: Coupling): Joint {
  return {
    freeLength: rearHalf.reach + frontHalf.reach,
    draftStiffness: inSeries(rearHalf.draftStiffness, frontHalf.draftStiffness),
    buffStiffness: inSeries(rearHalf.buffStiffness, frontHalf.buffStiffness),
    damping: inSeries(rearHalf.damping, frontHalf.damping),
    slack: rearHalf.slack + frontHalf.slack,
    release: Math.min(rearHalf.release, frontHalf.release),
  };
}

/**
 * Origin to origin of two coupled vehicles on straight level track with the joint at its free length, m. The free
 * length is measured pivot to pivot in space, so heads fitted at different heights stand a little closer.
 */
export function referenceSpacing(leading: Vehicle, trailing: Vehicle): number {
  const rear = couplerPivot(leading, 'rear');
  const front = couplerPivot(trailing, 'front');
  const free = leading.rear.coupling.reach + trailing.front.coupling.reach;
  const step = rear.up - front.up;
  return front.ahead - rear.ahead + Math.sqrt(Math.max(0, free * free - step * step));
}
