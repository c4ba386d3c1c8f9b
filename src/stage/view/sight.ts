import { type PerspectiveCamera, Vector3 } from 'three';
import type { Vec3 } from '../../core/math/vec3.ts';
import type { Pixel } from './shown.ts';

/** Beyond this many px from the stage's corner a place is out of sight. */
const outOfSight = 4000;

/** A line of sight that runs further over the ground than this, m, is almost level and shows no place to work at. */
const farthestPlan = 300;

const projected = new Vector3();

/** Where a camera sees a place in the room on a stage of this size, px; null behind the eye or far outside. */
export function pixelOf(camera: PerspectiveCamera, place: Vec3, width: number, height: number): Pixel | null {
  projected.set(...place).project(camera);
  if (projected.z > 1 || projected.z < -1) return null;
  const x = ((projected.x + 1) / 2) * width;
  const y = ((1 - projected.y) / 2) * height;
  return Math.abs(x) > outOfSight || Math.abs(y) > outOfSight ? null : { x, y };
}

/** The place in the room at a height (m) that a camera sees at a pixel; null where the line of sight does not meet it ahead. */
export function placeUnder(
  camera: PerspectiveCamera,
  { x, y }: Pixel,
  z: number,
  width: number,
  height: number,
): Vec3 | null {
  const eye = camera.position;
  projected
    .set((2 * x) / width - 1, 1 - (2 * y) / height, 0.5)
    .unproject(camera)
    .sub(eye);
  const times = (z - eye.z) / projected.z;
  if (!(times > 0) || !Number.isFinite(times)) return null;
  const place: Vec3 = [eye.x + times * projected.x, eye.y + times * projected.y, z];
  return Math.hypot(place[0] - eye.x, place[1] - eye.y) > farthestPlan ? null : place;
}
