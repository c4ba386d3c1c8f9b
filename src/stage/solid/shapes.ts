import { ShapeUtils, Vector2 } from 'three';
import type { Vec3 } from '../../core/math/vec3.ts';
import { outline, type Pen, polygon, type Solid } from './solid.ts';

/** From and to along one axis, m. */
export type Span = readonly [from: number, to: number];

/** Roles of a box's faces. */
export interface BoxRoles {
  readonly top: number;
  readonly side: number;
  readonly end: number;
  readonly under?: number;
}

/** Adds a box in axes x ahead, y left, z up, with all twelve edges inked if a pen is given. */
export function box(solid: Solid, x: Span, y: Span, z: Span, roles: BoxRoles, pen: Pen | null): void {
  const [x0, x1] = x;
  const [y0, y1] = y;
  const [z0, z1] = z;
  const low: Vec3[] = [
    [x0, y0, z0],
    [x1, y0, z0],
    [x1, y1, z0],
    [x0, y1, z0],
  ];
  const high = low.map(([px, py]): Vec3 => [px, py, z1]);
  polygon(solid, high, roles.top);
  polygon(solid, [low[3], low[2], low[1], low[0]], roles.under ?? roles.side);
  polygon(solid, [low[0], low[1], high[1], high[0]], roles.side);
  polygon(solid, [low[2], low[3], high[3], high[2]], roles.side);
  polygon(solid, [low[1], low[2], high[2], high[1]], roles.end);
  polygon(solid, [low[3], low[0], high[0], high[3]], roles.end);
  if (pen === null) return;
  outline(solid, high, pen);
  outline(solid, low, pen);
  for (let i = 0; i < 4; i++) outline(solid, [low[i], high[i]], pen);
}

/** Which axis a prism is drawn out along, and where its outline lies: x: (y, z); y: (z, x); z: (x, y). */
export type Drawn = 'x' | 'y' | 'z';

const placeOutline: Readonly<Record<Drawn, (u: number, v: number, along: number) => Vec3>> = {
  x: (u, v, along) => [along, u, v],
  y: (u, v, along) => [v, along, u],
  z: (u, v, along) => [u, v, along],
};

/** A prism: outline corners counter-clockwise seen from the far end of its axis, one role a flank. */
export interface PrismRoles {
  /** Role of the flank from corner i to corner i + 1. */
  readonly flank: (i: number) => number;
  readonly end: number;
  /** Flank edges (at corner i) that are inked along the prism; its two ends are inked with any pen. */
  readonly inked?: (i: number) => boolean;
}

/** Adds a prism drawn out along an axis. */
export function prism(
  solid: Solid,
  axis: Drawn,
  corners: readonly (readonly [number, number])[],
  along: Span,
  roles: PrismRoles,
  pen: Pen | null,
): void {
  const put = placeOutline[axis];
  const near = corners.map(([u, v]) => put(u, v, along[0]));
  const far = corners.map(([u, v]) => put(u, v, along[1]));
  cap(solid, corners, far, roles.end, false);
  cap(solid, corners, near, roles.end, true);
  for (let i = 0; i < corners.length; i++) {
    const j = (i + 1) % corners.length;
    polygon(solid, [near[i], near[j], far[j], far[i]], roles.flank(i));
  }
  if (pen === null) return;
  outline(solid, near, pen);
  outline(solid, far, pen);
  for (let i = 0; i < corners.length; i++) {
    if (roles.inked?.(i) ?? true) outline(solid, [near[i], far[i]], pen);
  }
}

/** Closes a prism's end; its outline may have inward corners. */
function cap(
  solid: Solid,
  flat: readonly (readonly [number, number])[],
  corners: readonly Vec3[],
  role: number,
  back: boolean,
): void {
  const triangles = ShapeUtils.triangulateShape(
    flat.map(([u, v]) => new Vector2(u, v)),
    [],
  );
  for (const [a, b, c] of triangles) {
    polygon(solid, back ? [corners[c], corners[b], corners[a]] : [corners[a], corners[b], corners[c]], role);
  }
}

/** Corners of a regular polygon standing in for a circle, for `prism`. */
export function circle(radius: number, sides: number, u = 0, v = 0, squash = 1): [number, number][] {
  return Array.from({ length: sides }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.5)) / sides;
    return [u + radius * Math.cos(angle), v + radius * squash * Math.sin(angle)];
  });
}

/** Adds a cylinder between two places on its axis. Only its end circles are inked. */
export function drum(
  solid: Solid,
  axis: Drawn,
  centre: readonly [number, number],
  radius: number,
  along: Span,
  sides: number,
  roles: { readonly flank: number; readonly end: number },
  pen: Pen | null,
): void {
  const corners = circle(radius, sides, centre[0], centre[1]);
  prism(solid, axis, corners, along, { flank: () => roles.flank, end: roles.end, inked: () => false }, pen);
}
