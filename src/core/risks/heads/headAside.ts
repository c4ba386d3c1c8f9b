import { clamp, sin } from '../../math/index.ts';
import type { Coupling, JointGeometry } from '../../stock/types.ts';

/**
 * How far (m) two heads stand apart across the line of their pivots: none while both shanks turn freely, since each then points at the other's
 * pivot; past its free swing a shank is held and its head left behind by reach times the sine of what it is short of.
 */
export function headsAside(leading: Coupling, trailing: Coupling, joint: JointGeometry): number {
  const short = (swing: number, free: number): number => swing - clamp(swing, -free, free);
  return Math.abs(
    leading.reach * sin(short(joint.swingLeading, leading.freeSwing)) +
      trailing.reach * sin(short(joint.swingTrailing, trailing.freeSwing)),
  );
}
