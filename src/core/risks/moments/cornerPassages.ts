import { firstNotBelow } from '../../math/index.ts';
import { newPlacement, placeVehicle } from '../../stock/index.ts';
import type { Placement } from '../../stock/types.ts';
import type { Frame, RiskContext } from '../types.ts';

/** When vehicles stand on the corners of a track between the frames of a run. */
export interface CornerPassages {
  /**
   * How often since the frame before one of a vehicle's points passed a corner; writes at which shares of the interval, 0 the frame before and 1 this
   * one, into the first of `shares`.
   */
  find(frame: Frame, vehicle: number, shares: number[], already?: number): number;
  /** The same, with the vehicle stood on the track at each; the first so many of the array, overwritten by the next call. */
  stand(frame: Frame, vehicle: number): number;
  readonly placements: readonly Placement[];
}

/**
 * Between two frames a train moves some millimetres. What a vehicle's stand is worth changes evenly there, but where one of the points that it stands on, or is
 * looked at by, comes to a corner of the track: a break of grade, the end of a step, the end of a run of cant. Its greatest value then lies at such a moment, and no frame
 * need fall on it. `corners` are chainages in rising order, m; `points` of a vehicle are shares of the way by chainage from its rear running point to its front one. Taken as even
 * from frame to frame: the speed and the chainage that a vehicle covers, which errs by some micrometres of chainage where it enters a curve.
 */
export function cornerPassages(
  { run, path, train: { vehicles } }: RiskContext,
  corners: Float64Array,
  points: readonly (readonly number[])[],
): CornerPassages {
  const found: number[] = [];
  const lowest = Float64Array.from(points, (shares) => Math.min(...shares));
  const highest = Float64Array.from(points, (shares) => Math.max(...shares));
  const placements: Placement[] = [];
  const passages: CornerPassages = {
    placements,
    find(frame, vehicle, shares, already = 0) {
      let count = already;
      if (frame.index === 0 || corners.length === 0) return count;
      const at = frame.index * run.vehicles + vehicle;
      const moved = run.chainage[at] - run.chainage[at - run.vehicles];
      if (moved === 0) return count;
      const { rearChainage, frontChainage } = frame.placements[vehicle];
      const span = frontChainage - rearChainage;
      const first = firstNotBelow(corners, rearChainage + lowest[vehicle] * span - Math.max(0, moved));
      if (first === corners.length || corners[first] > rearChainage + highest[vehicle] * span - Math.min(0, moved))
        return count;
      for (const point of points[vehicle]) {
        const now = rearChainage + point * span;
        const most = Math.max(now, now - moved);
        for (let k = first; k < corners.length && corners[k] < most; k++) {
          const share = 1 + (corners[k] - now) / moved;
          if (share > 0 && share < 1) shares[count++] = share;
        }
      }
      return count;
    },
    stand(frame, vehicle) {
      const count = passages.find(frame, vehicle, found);
      for (let k = 0; k < count; k++) {
        placements[k] ??= newPlacement();
        placeVehicle(
          path.track,
          vehicles[vehicle],
          chainageBetween(run, frame.index, vehicle, found[k]),
          placements[k],
        );
      }
      return count;
    },
  };
  return passages;
}

/** Chainage (m) of a vehicle at a share of the way from the frame before to a frame of a run. */
export function chainageBetween(
  { chainage, vehicles }: RiskContext['run'],
  frame: number,
  vehicle: number,
  share: number,
): number {
  const at = frame * vehicles + vehicle;
  const before = chainage[at - vehicles];
  return before + share * (chainage[at] - before);
}
