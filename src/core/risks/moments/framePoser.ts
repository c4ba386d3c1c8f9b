import { jointGeometry, newJointGeometry, newPlacement, placeVehicle } from '../../stock/index.ts';
import type { Frame, RiskContext } from '../types.ts';

/**
 * Poses the whole train at one frame of its run: call with a frame index, get every vehicle's placement and every joint's
 * geometry (m, rad). The same `Frame` object is overwritten by the next call. Throws RangeError where a vehicle does not
 * fit the track, as `placeVehicle` does.
 */
export function framePoser(context: RiskContext): (index: number) => Frame {
  const { run, path, train } = context;
  const { vehicles } = train;
  const placements = vehicles.map(() => newPlacement());
  const joints = vehicles.slice(1).map(() => newJointGeometry());
  const frame = { index: 0, placements, joints };
  return (index) => {
    frame.index = index;
    const row = index * vehicles.length;
    for (let i = 0; i < vehicles.length; i++) {
      placeVehicle(path.track, vehicles[i], run.chainage[row + i], placements[i]);
    }
    for (let j = 0; j < joints.length; j++) {
      jointGeometry(vehicles[j], vehicles[j + 1], placements[j], placements[j + 1], joints[j]);
    }
    return frame;
  };
}
