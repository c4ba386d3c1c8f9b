import { trackPoint } from '../track/index.ts';
import type { Track } from '../track/types.ts';
import { frontReach, rearReach } from './ends.ts';
import { newPlacement, placeVehicle } from './placement.ts';
import type { Placement, Vehicle } from './types.ts';

/** Plan corners of a placed body in the room, m: front left, front right, rear right, rear left. */
export type BodyOutline = readonly [
  readonly [number, number],
  readonly [number, number],
  readonly [number, number],
  readonly [number, number],
];

/** What a vehicle sweeps at one place: greatest distance to the left of the centreline and to the right of it, m. */
export interface SweptWidth {
  readonly left: number;
  readonly right: number;
}

/** The body's rectangle as it lies in plan. */
export function bodyOutline(vehicle: Vehicle, placed: Placement): BodyOutline {
  const { origin: o, ahead: a, left: l } = placed;
  const side = vehicle.bodyWidth / 2;
  const corner = (along: number, across: number): [number, number] => [
    o[0] + along * a[0] + across * l[0],
    o[1] + along * a[1] + across * l[1],
  ];
  const front = frontReach(vehicle);
  const rear = -rearReach(vehicle);
  return [corner(front, side), corner(front, -side), corner(rear, -side), corner(rear, side)];
}

/**
 * The width a vehicle sweeps over the track's cross-section at `chainage` while it passes, m from the centreline to each
 * side. The pass is sampled every `step` metres of travel; between samples the extremes move by less than step²/8R.
 */
export function sweptWidth(track: Track, vehicle: Vehicle, chainage: number, step = 0.002): SweptWidth {
  const here = trackPoint(track, chainage);
  const cos = Math.cos(here.heading);
  const sin = Math.sin(here.heading);
  const placed = newPlacement();
  let left = 0;
  let right = 0;
  // A body's end stands at most its reach of chord beyond the origin, but may stand a little more of chainage.
  const from = chainage - 1.1 * frontReach(vehicle);
  const to = chainage + 1.1 * rearReach(vehicle);
  const steps = Math.ceil((to - from) / step);
  for (let k = 0; k <= steps; k++) {
    placeVehicle(track, vehicle, from + ((to - from) * k) / steps, placed);
    const outline = bodyOutline(vehicle, placed);
    // Where the outline crosses the normal: each edge whose ends lie on either side of it.
    for (let e = 0; e < 4; e++) {
      const p = outline[e];
      const q = outline[(e + 1) % 4];
      const p1 = (p[0] - here.x) * cos + (p[1] - here.y) * sin;
      const q1 = (q[0] - here.x) * cos + (q[1] - here.y) * sin;
      if (p1 * q1 > 0) continue;
      const share = p1 === q1 ? 0 : p1 / (p1 - q1);
      const p2 = (p[1] - here.y) * cos - (p[0] - here.x) * sin;
      const q2 = (q[1] - here.y) * cos - (q[0] - here.x) * sin;
      const across = p2 + share * (q2 - p2);
      left = Math.max(left, across);
      right = Math.max(right, -across);
    }
  }
  return { left, right };
}
