import type { Vec3 } from '../../core/math/vec3.ts';
import { emptyStrokes, line, type Strokes } from '../ink/strokes.ts';

/**
 * Faces with flat normals and the inked edges that go with them, being put together: plain arrays, metres. `role` is an
 * index into the palette it will be drawn with.
 */
export interface Solid {
  readonly position: number[];
  readonly normal: number[];
  readonly role: number[];
  readonly index: number[];
  readonly strokes: Strokes;
  /** Two numbers a vertex for surfaces that are painted by their place (chainage and distance left, m); empty where none is. */
  readonly paint: number[];
}

/** How the edges of a piece are inked: weight in screen pixels and the role of its ink. */
export interface Pen {
  readonly weight: number;
  readonly role: number;
}

export const emptySolid = (): Solid => ({
  position: [],
  normal: [],
  role: [],
  index: [],
  strokes: emptyStrokes(),
  paint: [],
});

/** Adds a flat polygon, corners counter-clockwise seen from outside. */
export function polygon(solid: Solid, corners: readonly Vec3[], role: number): void {
  const first = solid.role.length;
  const normal = polygonNormal(corners);
  for (const corner of corners) {
    solid.position.push(...corner);
    solid.normal.push(...normal);
    solid.role.push(role);
  }
  for (let i = 2; i < corners.length; i++) solid.index.push(first, first + i - 1, first + i);
}

/** Newell's normal: sound for any flat polygon, also when three corners lie in line. */
function polygonNormal(corners: readonly Vec3[]): Vec3 {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < corners.length; i++) {
    const [ax, ay, az] = corners[i];
    const [bx, by, bz] = corners[(i + 1) % corners.length];
    x += (ay - by) * (az + bz);
    y += (az - bz) * (ax + bx);
    z += (ax - bx) * (ay + by);
  }
  const size = Math.hypot(x, y, z) || 1;
  return [x / size, y / size, z / size];
}

/** Inks a closed outline. */
export function outline(solid: Solid, corners: readonly Vec3[], pen: Pen): void {
  for (let i = 0; i < corners.length; i++) {
    line(solid.strokes, corners[i], corners[(i + 1) % corners.length], pen.weight, pen.role);
  }
}

/** Copies `part` into `solid`, moved by `by` and, if `flip`, turned half round about the vertical first. */
export function place(solid: Solid, part: Solid, by: Vec3, flip = false): void {
  const first = solid.role.length;
  const sign = flip ? -1 : 1;
  for (let i = 0; i < part.position.length; i += 3) {
    solid.position.push(
      sign * part.position[i] + by[0],
      sign * part.position[i + 1] + by[1],
      part.position[i + 2] + by[2],
    );
    solid.normal.push(sign * part.normal[i], sign * part.normal[i + 1], part.normal[i + 2]);
  }
  for (const role of part.role) solid.role.push(role);
  for (const index of part.index) solid.index.push(first + index);
  for (const [to, from] of [
    [solid.strokes.from, part.strokes.from],
    [solid.strokes.to, part.strokes.to],
  ]) {
    for (let i = 0; i < from.length; i += 3) {
      to.push(sign * from[i] + by[0], sign * from[i + 1] + by[1], from[i + 2] + by[2]);
    }
  }
  for (const value of part.strokes.style) solid.strokes.style.push(value);
  for (const value of part.strokes.run) solid.strokes.run.push(value);
}
