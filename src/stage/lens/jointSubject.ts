import type { Vec3 } from '../../core/math/vec3.ts';
import { newPlacement, placeVehicle } from '../../core/stock/index.ts';
import type { Placement, Train } from '../../core/stock/types.ts';
import type { SessionState } from '../../state/types.ts';
import { headPlaces, type LensSubject } from './lensFrame.ts';

/** The two vehicles of a joint as they stand; null when the train has no such joint. */
export function jointSubject(train: Train, placements: readonly Placement[], joint: number): LensSubject | null {
  if (joint < 0 || joint + 1 >= train.vehicles.length) return null;
  return {
    leading: train.vehicles[joint],
    trailing: train.vehicles[joint + 1],
    placedLeading: placements[joint],
    placedTrailing: placements[joint + 1],
  };
}

/** Midway between a joint's two heads, m. */
export function betweenHeads(subject: LensSubject): Vec3 {
  const { leading, trailing } = headPlaces(subject);
  return [(leading[0] + trailing[0]) / 2, (leading[1] + trailing[1]) / 2, (leading[2] + trailing[2]) / 2];
}

/** The heads of the same two vehicles at the same chainages on the track that a tried cure would make, m. */
export function ghostHeads(
  ghost: NonNullable<SessionState['ghost']>['trial'],
  joint: number,
  now: LensSubject,
): { leading: Vec3; trailing: Vec3 } | null {
  const { path, train } = ghost;
  if (joint + 1 >= train.vehicles.length) return null;
  const stand = (index: number, placed: Placement): Placement =>
    placeVehicle(path.track, train.vehicles[index], placed.chainage, newPlacement());
  try {
    const placements: Placement[] = [];
    placements[joint] = stand(joint, now.placedLeading);
    placements[joint + 1] = stand(joint + 1, now.placedTrailing);
    const subject = jointSubject(train, placements, joint);
    return subject === null ? null : headPlaces(subject);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
