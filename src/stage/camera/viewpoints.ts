import type { Vec3 } from '../../core/math/vec3.ts';
import { frontReach, pointOnVehicle } from '../../core/stock/index.ts';
import type { Placement, Vehicle } from '../../core/stock/types.ts';
import type { Railway } from '../railway.ts';
import { frameAll, type Insets } from './framing.ts';
import { type Look, lookBetween } from './look.ts';

/** Angles of view, rad: narrow for a drawing's calm lines, wide where one stands on the train. */
const deg = Math.PI / 180;
export const fields = { walk: 24 * deg, eye: 34 * deg, ride: 48 * deg, down: 8 * deg } as const;

/** How far from the table's edge a person stands, m. */
const standOff = 0.7;

/** Directions tried for the first picture, and the height of its eye. */
const directions = 24;
const firstElevation = 29 * deg;

/** How much nearer than its rivals a picture has to be before its side of the railway gives way, as a share. */
const nearSideWorth = 0.12;

/**
 * The first picture: from the side that shows the railway largest, and between sides about as good from the one nearest to
 * `interest` (m), the place something happens at.
 */
export function wholeRailway(points: readonly Vec3[], aspect: number, insets: Insets, interest: Vec3 | null): Look {
  let best: Look | null = null;
  let bestCost = Infinity;
  for (let i = 0; i < directions; i++) {
    const azimuth = (2 * Math.PI * (i + 0.5)) / directions;
    const look = frameAll(points, { azimuth, elevation: firstElevation, field: fields.walk }, aspect, insets);
    let cost = Math.log(look.height);
    if (interest !== null) {
      const x = interest[0] - look.target[0];
      const y = interest[1] - look.target[1];
      const towards = (x * Math.cos(azimuth) + y * Math.sin(azimuth)) / Math.max(look.height, 1e-6);
      cost -= nearSideWorth * Math.min(1, Math.max(-1, 3 * towards));
    }
    if (cost < bestCost) {
      best = look;
      bestCost = cost;
    }
  }
  return best as Look;
}

/** A look at a place on the railway from near by, from the outside of its curve and a little from above. */
export function atPlace(place: Vec3, heading: number, curvature: number, from: Look, height: number): Look {
  const left = heading + Math.PI / 2;
  const outside = curvature > 0 ? left + Math.PI : left;
  // On straight track stay on the side one is already on.
  const here = Math.cos(from.azimuth - left) >= 0 ? left : left + Math.PI;
  const side = Math.abs(curvature) > 0.05 ? outside : here;
  // Half-way round towards where one stands now: the railway stays recognisable.
  const turn = Math.atan2(Math.sin(from.azimuth - side), Math.cos(from.azimuth - side));
  const azimuth = side + Math.max(-50 * deg, Math.min(50 * deg, turn));
  return { target: place, azimuth, elevation: 24 * deg, height, field: fields.walk };
}

/** Straight down on everything, east to the right. */
export function straightDown(points: readonly Vec3[], aspect: number, insets: Insets): Look {
  return frameAll(points, { azimuth: -Math.PI / 2, elevation: Math.PI / 2, field: fields.down }, aspect, insets);
}

/** Standing beside the table at eye height, looking at `target`, on the side that `azimuth` says. */
export function atEyeHeight(railway: Railway, target: Vec3, azimuth: number): Look {
  const eye = railway.floor + railway.eye;
  let far = standOff;
  for (const table of railway.tables) {
    far = Math.max(far, standOff + wayOut(table.x, table.y, target, azimuth));
  }
  const place: Vec3 = [target[0] + far * Math.cos(azimuth), target[1] + far * Math.sin(azimuth), eye];
  return lookBetween(place, target, fields.eye);
}

/** How far it is from a place to the edge of a rectangle in a direction, m; 0 from outside. */
function wayOut(x: readonly [number, number], y: readonly [number, number], from: Vec3, azimuth: number): number {
  if (from[0] < x[0] || from[0] > x[1] || from[1] < y[0] || from[1] > y[1]) return 0;
  const cos = Math.cos(azimuth);
  const sin = Math.sin(azimuth);
  const toX = cos > 0 ? (x[1] - from[0]) / cos : cos < 0 ? (x[0] - from[0]) / cos : Infinity;
  const toY = sin > 0 ? (y[1] - from[1]) / sin : sin < 0 ? (y[0] - from[1]) / sin : Infinity;
  return Math.min(toX, toY);
}

/** From the front of a vehicle, where a driver looks out, ahead along its body. */
export function inCab(vehicle: Vehicle, placed: Placement): Look {
  const x = frontReach(vehicle) + 0.004;
  const eye = pointOnVehicle(placed, x, 0, 0.82 * vehicle.bodyHeight);
  const target = pointOnVehicle(placed, x + 0.35, 0, 0.45 * vehicle.bodyHeight);
  return lookBetween(eye, target, fields.ride);
}

/** The ride on a coupling: how far out from the middle of the train and how far behind the joint, in body widths. */
const besideBody = 0.92;
const behindJoint = 1.35;

/**
 * Beside the trailing vehicle of a joint, at the height of its coupling, looking along the train at the joint. `side` 1
 * is the left of the train.
 */
export function onCoupling(joint: Vec3, vehicle: Vehicle, placed: Placement, side: 1 | -1): Look {
  const { ahead, left, up } = placed;
  const aside = vehicle.bodyWidth * besideBody;
  const back = vehicle.bodyWidth * behindJoint;
  const rise = 0.12 * vehicle.bodyWidth;
  const eye: Vec3 = [0, 0, 0];
  const target: Vec3 = [0, 0, 0];
  for (let axis = 0; axis < 3; axis++) {
    eye[axis] = joint[axis] - back * ahead[axis] + side * aside * left[axis] + rise * up[axis];
    target[axis] = joint[axis] + 0.5 * back * ahead[axis] + 0.05 * vehicle.bodyWidth * up[axis];
  }
  return lookBetween(eye, target, fields.ride);
}
