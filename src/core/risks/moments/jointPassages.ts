import { jointGeometry, newJointGeometry, newPlacement, placeVehicle } from '../../stock/index.ts';
import type { JointGeometry } from '../../stock/types.ts';
import { profileCorners } from '../../track/index.ts';
import type { Frame, RiskContext } from '../types.ts';
import { chainageBetween, cornerPassages } from './cornerPassages.ts';

/** How joints look while a running point beside them stands on a corner of the track between two frames. */
export interface JointPassages {
  /** How often since the frame before one of the four running points at a joint passed a corner; its geometry at each is in the first so many of `joints`. */
  stand(frame: Frame, joint: number): number;
  /** Overwritten by the next call. */
  readonly joints: readonly JointGeometry[];
}

/**
 * Heights of heads change evenly between frames on even grades, but where a running point comes to a corner: their greatest difference over a break lies there, and no
 * frame need fall on it. Corners are breaks of grade, ends of steps, and places where cant begins or ends to run.
 */
export function jointPassages(context: RiskContext): JointPassages {
  const { run, path, train } = context;
  const { vehicles } = train;
  const { track } = path;
  const corners = Float64Array.from([...profileCorners(track), ...(track.cant?.startChainage ?? [])]).sort();
  const passages = cornerPassages(
    context,
    corners,
    vehicles.map(() => [0, 1]),
  );
  const joints: JointGeometry[] = [];
  const shares: number[] = [];
  const leading = newPlacement();
  const trailing = newPlacement();
  return {
    joints,
    stand(frame, joint) {
      const count = passages.find(frame, joint + 1, shares, passages.find(frame, joint, shares));
      for (let k = 0; k < count; k++) {
        joints[k] ??= newJointGeometry();
        placeVehicle(track, vehicles[joint], chainageBetween(run, frame.index, joint, shares[k]), leading);
        placeVehicle(track, vehicles[joint + 1], chainageBetween(run, frame.index, joint + 1, shares[k]), trailing);
        jointGeometry(vehicles[joint], vehicles[joint + 1], leading, trailing, joints[k]);
      }
      return count;
    },
  };
}

/** Of the joint as it stands at a frame and at the first `passed` of the others, the height between heads that is greatest, m, with its sign. */
export function greatestOffset(frame: Frame, joint: number, { joints }: JointPassages, passed: number): number {
  let greatest = frame.joints[joint].verticalOffset;
  for (let k = 0; k < passed; k++) {
    const { verticalOffset } = joints[k];
    if (Math.abs(verticalOffset) > Math.abs(greatest)) greatest = verticalOffset;
  }
  return greatest;
}
