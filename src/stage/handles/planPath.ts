import type { Vec3 } from '../../core/math/vec3.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { Track, TrackPoint } from '../../core/track/types.ts';
import type { Pixel } from '../view/shown.ts';

/** Way between the points of a drawn line, m: finer than an easement, coarser than a sleeper. */
const pitch = 0.02;

/** Places along a track, at most `pitch` apart and with both its ends, m. */
export function planPoints(track: Track): Vec3[] {
  const count = Math.max(1, Math.ceil(track.length / pitch));
  const point = {} as TrackPoint;
  return Array.from({ length: count + 1 }, (_, k): Vec3 => {
    trackPoint(track, (track.length * k) / count, point);
    return [point.x, point.y, point.z];
  });
}

/** A line of places as the path of an SVG; it breaks where places are out of sight. */
export function pathOf(points: readonly Vec3[], toPixel: (place: Vec3) => Pixel | null): string {
  let path = '';
  let drawing = false;
  for (const point of points) {
    const at = toPixel(point);
    if (at !== null) path += `${drawing ? 'L' : 'M'}${at.x.toFixed(1)} ${at.y.toFixed(1)}`;
    drawing = at !== null;
  }
  return path;
}
