import { trackPoint } from '../track/index.ts';
import type { Track, TrackPoint } from '../track/types.ts';
import type { Placement } from './types.ts';

/**
 * How far (m) the middle of a wheelbase stands above the rail in a sag of the given vertical radius (m): R - √(R² - a²/4).
 * On a summit it is the same length the other way: the middle axle carries and the end axles lift. Throws RangeError when
 * the wheelbase spans more than the circle.
 */
export function middleAxleLift(verticalRadius: number, wheelbase: number): number {
  const half = wheelbase / 2;
  if (!(verticalRadius > half)) {
    throw new RangeError(`A wheelbase of ${wheelbase} m does not stand in a sag of radius ${verticalRadius} m`);
  }
  return (half * half) / (verticalRadius + Math.sqrt((verticalRadius - half) * (verticalRadius + half)));
}

/**
 * Height (m) of the rail plane of a placed rigid frame above the rail, at a share of the way from its rear to its front
 * running point (0.5: the middle axle; below 0 and above 1 under the overhangs). Positive: a wheel there hangs; negative: it
 * carries and an end axle lifts. `rail` is overwritten, so that hot loops need not make one.
 */
export function axleGap(track: Track, placed: Placement, share = 0.5, rail?: TrackPoint): number {
  const { origin, ahead, frontChainage, rearChainage } = placed;
  const chainage = rearChainage + share * (frontChainage - rearChainage);
  const here = trackPoint(track, chainage, rail);
  // The point of the frame's axis above that point of the rail, measured along the axis in plan.
  const level = ahead[0] * ahead[0] + ahead[1] * ahead[1];
  const along = ((here.x - origin[0]) * ahead[0] + (here.y - origin[1]) * ahead[1]) / level;
  return origin[2] + along * ahead[2] - here.z;
}
