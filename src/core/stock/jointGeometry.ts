import { atan2, cos, sin } from '../math/index.ts';
import { type End, frontReach, rearReach } from './ends.ts';
import { guideLengthening } from './guide.ts';
import type { Buffers, JointGeometry, Placement, Vehicle } from './types.ts';

/** A coupling's pivot in the room and the axis of what carries it. */
interface Pivot {
  x: number;
  y: number;
  z: number;
  /** Unit heading of the carrier in plan, and its rise per metre of plan. */
  headingX: number;
  headingY: number;
  slope: number;
  chainage: number;
}

const blankPivot = (): Pivot => ({ x: 0, y: 0, z: 0, headingX: 1, headingY: 0, slope: 0, chainage: 0 });

/** Overwritten by every call before they are read, so that a joint's geometry allocates nothing. */
const pivotLeading = blankPivot();
const pivotTrailing = blankPivot();

/** Below this plan distance the line of pivots has no direction worth the name, m. */
const coincident = 1e-9;

/** A joint geometry with every field present and nothing in it, to be reused as `out`. */
export const newJointGeometry = (): JointGeometry => ({
  pinDistance: 0,
  rise: 0,
  chainage: 0,
  lateralOffset: 0,
  verticalOffset: 0,
  swingLeading: 0,
  swingTrailing: 0,
  lengthening: 0,
  bufferLateral: [0, 0],
  bufferVertical: [0, 0],
  bufferGap: [0, 0],
});

/**
 * What the rear of one placed vehicle and the front of the next look like to each other (m, rad; signs in
 * `JointGeometry`). Offsets are taken in the joint's own frame: ahead along the bisector of the two bodies, left
 * horizontal, up square to both. Each head lies a reach from its pivot towards the mate's pivot in plan, at its own height above its own
 * carrier's rail plane. Returns `out`.
 */
export function jointGeometry(
  leading: Vehicle,
  trailing: Vehicle,
  placedLeading: Placement,
  placedTrailing: Placement,
  out: JointGeometry = newJointGeometry(),
): JointGeometry {
  const p = pivotLeading;
  const q = pivotTrailing;
  writePivot(leading, placedLeading, 'rear', p);
  writePivot(trailing, placedTrailing, 'front', q);

  const a = placedLeading.ahead;
  const b = placedTrailing.ahead;

  // The joint's frame: bisector of the two bodies, horizontal left, up.
  let aheadX = a[0] + b[0];
  let aheadY = a[1] + b[1];
  let aheadZ = a[2] + b[2];
  const size = Math.sqrt(aheadX * aheadX + aheadY * aheadY + aheadZ * aheadZ);
  aheadX /= size;
  aheadY /= size;
  aheadZ /= size;
  const level = Math.sqrt(aheadX * aheadX + aheadY * aheadY);
  const leftX = -aheadY / level;
  const leftY = aheadX / level;
  const upX = (-aheadZ * aheadX) / level;
  const upY = (-aheadZ * aheadY) / level;
  const upZ = level;

  // The line of pivots, drawn ahead from the trailing to the leading one.
  const pinX = p.x - q.x;
  const pinY = p.y - q.y;
  const pinZ = p.z - q.z;
  const planSquared = pinX * pinX + pinY * pinY;
  const plan = Math.sqrt(planSquared);
  out.pinDistance = Math.sqrt(planSquared + pinZ * pinZ);
  out.rise = out.pinDistance > coincident ? pinZ / out.pinDistance : aheadZ;
  out.chainage = (p.chainage + q.chainage) / 2;
  const pinned = plan > coincident;
  const lineX = pinned ? pinX / plan : aheadX / level;
  const lineY = pinned ? pinY / plan : aheadY / level;
  const cosP = p.headingX * lineX + p.headingY * lineY;
  const sinP = p.headingX * lineY - p.headingY * lineX;
  const cosQ = q.headingX * lineX + q.headingY * lineY;
  const sinQ = q.headingX * lineY - q.headingY * lineX;
  out.swingLeading = atan2(sinP, cosP);
  out.swingTrailing = atan2(sinQ, cosQ);

  // Heads: along the line of pivots in plan, in the rail plane of their carriers in height.
  const guideP = guideLengthening(leading.rear.coupling, out.swingLeading);
  const guideQ = guideLengthening(trailing.front.coupling, out.swingTrailing);
  out.lengthening = guideP + guideQ;
  const reachP = leading.rear.coupling.reach + guideP;
  const reachQ = trailing.front.coupling.reach + guideQ;
  const reach = reachP + reachQ;
  const headX = pinX - reach * lineX;
  const headY = pinY - reach * lineY;
  const headZ = pinZ - reachP * cosP * p.slope - reachQ * cosQ * q.slope;
  out.verticalOffset = headX * upX + headY * upY + headZ * upZ;

  // Body ends, at the height of their couplings.
  const oa = placedLeading.origin;
  const ob = placedTrailing.origin;
  const endA = -rearReach(leading);
  const endB = frontReach(trailing);
  const upA = placedLeading.up;
  const upB = placedTrailing.up;
  const heightA = leading.rear.coupling.headHeight;
  const heightB = trailing.front.coupling.headHeight;
  const gapX = oa[0] - ob[0];
  const gapY = oa[1] - ob[1];
  const gapZ = oa[2] - ob[2];
  const bodyX = gapX + endA * a[0] + heightA * upA[0] - endB * b[0] - heightB * upB[0];
  const bodyY = gapY + endA * a[1] + heightA * upA[1] - endB * b[1] - heightB * upB[1];
  out.lateralOffset = bodyX * leftX + bodyY * leftY;

  const buffersA: Buffers | null = leading.rear.buffers;
  const buffersB: Buffers | null = trailing.front.buffers;
  for (let side = 0; side < 2; side++) {
    if (buffersA === null || buffersB === null) {
      out.bufferLateral[side] = Number.NaN;
      out.bufferVertical[side] = Number.NaN;
      out.bufferGap[side] = Number.NaN;
      continue;
    }
    const half = side === 0 ? 0.5 : -0.5;
    const alongA = endA - buffersA.length;
    const alongB = endB + buffersB.length;
    const acrossA = half * buffersA.spacing;
    const acrossB = half * buffersB.spacing;
    const l = placedLeading.left;
    const m = placedTrailing.left;
    const hA = buffersA.height;
    const hB = buffersB.height;
    const x = gapX + alongA * a[0] + acrossA * l[0] + hA * upA[0] - alongB * b[0] - acrossB * m[0] - hB * upB[0];
    const y = gapY + alongA * a[1] + acrossA * l[1] + hA * upA[1] - alongB * b[1] - acrossB * m[1] - hB * upB[1];
    const z = gapZ + alongA * a[2] + acrossA * l[2] + hA * upA[2] - alongB * b[2] - acrossB * m[2] - hB * upB[2];
    out.bufferLateral[side] = x * leftX + y * leftY;
    out.bufferVertical[side] = x * upX + y * upY + z * upZ;
    out.bufferGap[side] = x * aheadX + y * aheadY + z * aheadZ;
  }
  return out;
}

/**
 * A pivot on the body goes with the chord. A pivot on a bogie goes with the bogie, which stands on its own short
 * wheelbase and so lies along the track's tangent at its running point; a rigid frame has no bogie, so there the body carries it.
 */
function writePivot(vehicle: Vehicle, placed: Placement, end: End, out: Pivot): void {
  const front = end === 'front';
  const sign = front ? 1 : -1;
  const half = vehicle.pivotSpacing / 2;
  const { coupling } = front ? vehicle.front : vehicle.rear;
  const beyond = (front ? vehicle.frontOverhang : vehicle.rearOverhang) - coupling.pivotInset;
  const onBogie = coupling.mount === 'bogie' && vehicle.bogies;
  const axis = onBogie ? (front ? placed.frontTangent : placed.rearTangent) : placed.ahead;
  const o = placed.origin;
  const a = placed.ahead;
  const level = Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1]);
  out.headingX = axis[0] / level;
  out.headingY = axis[1] / level;
  out.slope = axis[2] / level;
  const toPoint = sign * half;
  const toPivot = sign * beyond;
  const up = coupling.headHeight;
  out.x = o[0] + toPoint * a[0] + toPivot * axis[0] - up * axis[2] * out.headingX;
  out.y = o[1] + toPoint * a[1] + toPivot * axis[1] - up * axis[2] * out.headingY;
  out.z = o[2] + toPoint * a[2] + toPivot * axis[2] + up * level;
  // A body leans with the mean cant of its running points, a bogie with the cant where it stands.
  const lean = onBogie ? placed.roll + (sign * placed.twist) / 2 : placed.roll;
  if (lean !== 0) {
    const across = up * sin(lean);
    const lost = up * (1 - cos(lean));
    out.x -= across * out.headingY - lost * axis[2] * out.headingX;
    out.y += across * out.headingX + lost * axis[2] * out.headingY;
    out.z -= lost * level;
  }
  // Beyond the running point the body covers chainage at the rate it does between its running points.
  const chainagePerMetre = (placed.frontChainage - placed.rearChainage) / vehicle.pivotSpacing;
  out.chainage = (front ? placed.frontChainage : placed.rearChainage) + toPivot * chainagePerMetre;
}
