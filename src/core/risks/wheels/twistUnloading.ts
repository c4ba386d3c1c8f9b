import type { Placement, Vehicle } from '../../stock/types.ts';
import { type Track, type TrackPoint, trackPoint } from '../../track/index.ts';
import { halfSpan } from './wheelPlay.ts';

/**
 * Cross-level that a frame takes up before one of its wheels hangs, in gauges: 0.5 mm (0.2 to 1.0) in H0, the play of axles in their boxes and what
 * light frames give. An assumption, no source; compensated or sprung frames take more.
 */
const twistPlayInGauges = 0.5 / 16.5;

/** Twist play of a frame of a gauge (m), m. */
export const twistPlay = (gauge: number): number => twistPlayInGauges * gauge;

/** How far (m) the cross-level under a rigid frame differs from its front axle to its rear one. */
export const frameTwist = ({ gauge }: Vehicle, { twist }: Placement): number => Math.abs(twist) * 2 * halfSpan(gauge);

/**
 * Share of its load that a wheel loses because the track twists under its frame: what the cross-level changes by over the wheelbase against what the frame takes up;
 * all of it where that is more. A bogie sees the twist where it stands, a rigid frame that between its ends.
 */
export function twistUnloading(
  vehicle: Vehicle,
  placement: Placement,
  track: Track,
  front: boolean,
  point: TrackPoint,
): number {
  if (track.cant === null) return 0;
  const { bogies, gauge, rigidWheelbase } = vehicle;
  const warp = bogies
    ? Math.abs(trackPoint(track, front ? placement.frontChainage : placement.rearChainage, point).twist) *
      rigidWheelbase *
      2 *
      halfSpan(gauge)
    : frameTwist(vehicle, placement);
  return Math.min(1, warp / twistPlay(gauge));
}
