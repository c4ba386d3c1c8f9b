import { dot, subtract, type Vec3 } from '../../core/math/vec3.ts';
import { eyeOf, type Look, pictureAxes } from './look.ts';

/** A part of the picture that is kept free, as shares of its size. */
export interface Insets {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Rounds of moving and widening: each shrinks the miss by about the perspective's depth ratio, a half at worst. */
const rounds = 20;

/** Least height of a picture, m: also for points that all lie in one place. */
const leastHeight = 0.05;

/**
 * The look from a given direction that shows all of `points` (m) as large as they go between the insets.
 * `aspect` is the picture's width over its height.
 */
export function frameAll(
  points: readonly Vec3[],
  direction: Pick<Look, 'azimuth' | 'elevation' | 'field'>,
  aspect: number,
  insets: Insets,
): Look {
  let look: Look = { ...direction, target: middle(points), height: 1 };
  const wide = 1 - insets.left - insets.right;
  const high = 1 - insets.top - insets.bottom;
  // Where the middle of the free part lies from the picture's middle, in picture heights.
  const offX = ((insets.left - insets.right) / 2) * aspect;
  const offY = (insets.bottom - insets.top) / 2;
  look = { ...look, height: spread(points, look) };
  for (let round = 0; round < rounds; round++) {
    const { right, up } = pictureAxes(look);
    const seen = extent(points, look);
    const scale = Math.max((seen.right - seen.left) / (wide * aspect), (seen.top - seen.bottom) / high);
    const height = Math.max(leastHeight, look.height * scale);
    const moveX = ((seen.left + seen.right) / 2) * look.height - offX * height;
    const moveY = ((seen.bottom + seen.top) / 2) * look.height - offY * height;
    look = {
      ...look,
      height,
      target: [
        look.target[0] + moveX * right[0] + moveY * up[0],
        look.target[1] + moveX * right[1] + moveY * up[1],
        look.target[2] + moveX * right[2] + moveY * up[2],
      ],
    };
  }
  return look;
}

/** Where points fall in the picture, in picture heights from its middle. */
function extent(points: readonly Vec3[], look: Look): { left: number; right: number; top: number; bottom: number } {
  const out = { left: Infinity, right: -Infinity, top: -Infinity, bottom: Infinity };
  for (const point of points) {
    const [x, y] = project(point, look);
    out.left = Math.min(out.left, x);
    out.right = Math.max(out.right, x);
    out.bottom = Math.min(out.bottom, y);
    out.top = Math.max(out.top, y);
  }
  return out;
}

/** A point's place in the picture: to the right and up from its middle, in picture heights. */
export function project(point: Vec3, look: Look): [x: number, y: number] {
  const { right, up } = pictureAxes(look);
  const eye = eyeOf(look);
  const toPoint = subtract(point, eye);
  const ahead = subtract(look.target, eye);
  const far = Math.hypot(...ahead);
  const depth = Math.max(1e-3, dot(toPoint, ahead) / far);
  const perHeight = 2 * Math.tan(look.field / 2) * depth;
  return [dot(toPoint, right) / perHeight, dot(toPoint, up) / perHeight];
}

function spread(points: readonly Vec3[], look: Look): number {
  const at = look.target;
  return Math.max(0.2, ...points.map((point) => 2 * Math.hypot(...subtract(point, at))));
}

function middle(points: readonly Vec3[]): Vec3 {
  const low: Vec3 = [Infinity, Infinity, Infinity];
  const high: Vec3 = [-Infinity, -Infinity, -Infinity];
  for (const point of points) {
    for (let axis = 0; axis < 3; axis++) {
      low[axis] = Math.min(low[axis], point[axis]);
      high[axis] = Math.max(high[axis], point[axis]);
    }
  }
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
}
