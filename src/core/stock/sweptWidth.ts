import { cos, sin } from '../math/index.ts';
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
 * side. The pass is sampled every `step` metres of travel, and a corner that crosses the section between two samples is met by
 * interpolation, so what is missed is of the order step²/8R.
 */
export function sweptWidth(track: Track, vehicle: Vehicle, chainage: number, step = 0.002): SweptWidth {
  const here = trackPoint(track, chainage);
  const cosine = cos(here.heading);
  const sine = sin(here.heading);
  /** A corner in the section's own axes: along the track, to its left. */
  const inSection = ([x, y]: readonly [number, number]): readonly [number, number] => [
    (x - here.x) * cosine + (y - here.y) * sine,
    (y - here.y) * cosine - (x - here.x) * sine,
  ];
  const placed = newPlacement();
  let left = 0;
  let right = 0;
  /** Where the segment from p to q crosses the section, if it does, something of the vehicle stands. */
  const meet = (p: readonly [number, number], q: readonly [number, number]): void => {
    if (p[0] * q[0] > 0) return;
    const share = p[0] === q[0] ? 0 : p[0] / (p[0] - q[0]);
    const across = p[1] + share * (q[1] - p[1]);
    left = Math.max(left, across);
    right = Math.max(right, -across);
  };
  // In a curve a body covers a little more chainage than its own length.
  const from = chainage - 1.1 * frontReach(vehicle);
  const to = chainage + 1.1 * rearReach(vehicle);
  const steps = Math.ceil((to - from) / step);
  let before: (readonly [number, number])[] | null = null;
  for (let k = 0; k <= steps; k++) {
    placeVehicle(track, vehicle, from + ((to - from) * k) / steps, placed);
    const corners = bodyOutline(vehicle, placed).map(inSection);
    for (let c = 0; c < 4; c++) {
      meet(corners[c], corners[(c + 1) % 4]);
      if (before !== null) meet(before[c], corners[c]);
    }
    before = corners;
  }
  return { left, right };
}
