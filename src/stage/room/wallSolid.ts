import type { Vec3 } from '../../core/math/vec3.ts';
import { line } from '../ink/strokes.ts';
import { type Pen, polygon, type Solid } from '../solid/solid.ts';
import type { DrawnDoor, DrawnRoom, FloorPlace } from './drawnRoom.ts';

/** Walls are cut off low, so that the railway is seen from every side, and drawn with a thickness that reads as a wall, m. */
const cutHeight = 0.12;
const thickness = 0.1;

/** Angle between two strokes of a door's arc, rad. */
const arcStep = Math.PI / 24;

/** Roles of the faces of walls. */
export const wallFace = { top: 0, side: 1 } as const;

/** Adds the walls of a room, with gaps where its doors are, their open leaves and the arcs they swing through on the floor. */
export function drawWalls(solid: Solid, { corners, doors }: DrawnRoom, floor: number, pen: Pen, fine: Pen): void {
  const outer = corners.map((_, i) => outside(corners, i));
  corners.forEach((from, wall) => {
    const next = (wall + 1) % corners.length;
    const length = Math.hypot(corners[next][0] - from[0], corners[next][1] - from[1]);
    const gaps = doors.filter((door) => door.wall === wall).sort((a, b) => a.from - b.from);
    const edges = [0, ...gaps.flatMap((gap) => [gap.from, gap.to]), length];
    for (let i = 0; i < edges.length; i += 2) {
      if (edges[i + 1] - edges[i] < thinnest) continue;
      const inner = [edges[i], edges[i + 1]].map((at) => along(from, corners[next], at / length));
      const far = [
        i === 0 ? outer[wall] : beyond(inner[0], from, corners[next]),
        i + 2 === edges.length ? outer[next] : beyond(inner[1], from, corners[next]),
      ];
      piece(solid, [inner[0], inner[1], far[1], far[0]], floor, pen, [i !== 0, i + 2 !== edges.length]);
    }
  });
  for (const door of doors) drawDoor(solid, door, floor, pen, fine);
}

/** A piece of wall between a door and a corner shorter than this is none, m. */
const thinnest = 1e-6;

/** A stretch of wall: corners counter-clockwise seen from above... inner from and to, outer to and from; its ends are seen where it stops at a door. */
function piece(
  solid: Solid,
  round: readonly FloorPlace[],
  floor: number,
  pen: Pen,
  [startSeen, endSeen]: readonly [boolean, boolean],
): void {
  // Seen from above the inner face is to the left of the wall: the corners run clockwise, and are turned about.
  const [innerFrom, innerTo, outerTo, outerFrom] = round.map(([x, y]) => [x, y, floor + cutHeight] as Vec3);
  const foot = ([x, y]: Vec3): Vec3 => [x, y, floor];
  const stroke = (a: Vec3, b: Vec3): void => line(solid.strokes, a, b, pen.weight, pen.role);
  polygon(solid, [innerFrom, outerFrom, outerTo, innerTo], wallFace.top);
  polygon(solid, [innerTo, foot(innerTo), foot(innerFrom), innerFrom], wallFace.side);
  polygon(solid, [outerFrom, foot(outerFrom), foot(outerTo), outerTo], wallFace.side);
  stroke(innerFrom, innerTo);
  stroke(outerFrom, outerTo);
  stroke(foot(innerFrom), foot(innerTo));
  for (const [seen, inner, outer, order] of [
    [startSeen, innerFrom, outerFrom, [0, 1, 2, 3]],
    [endSeen, innerTo, outerTo, [3, 2, 1, 0]],
  ] as const) {
    if (!seen) continue;
    const corners = [inner, foot(inner), foot(outer), outer];
    polygon(
      solid,
      order.map((i) => corners[i]),
      wallFace.side,
    );
    stroke(inner, outer);
    stroke(inner, foot(inner));
    stroke(outer, foot(outer));
  }
}

function drawDoor(
  solid: Solid,
  { from, to, hinge, closed, swing }: DrawnDoor,
  floor: number,
  pen: Pen,
  fine: Pen,
): void {
  const width = to - from;
  const leafAt = (angle: number, z: number): Vec3 => [
    hinge[0] + width * Math.cos(angle),
    hinge[1] + width * Math.sin(angle),
    z,
  ];
  const [low, high] = [floor, floor + cutHeight];
  const open = closed + swing;
  const foot: Vec3 = [hinge[0], hinge[1], low];
  const head: Vec3 = [hinge[0], hinge[1], high];
  const leaf = [foot, leafAt(open, low), leafAt(open, high), head];
  leaf.forEach((corner, i) => {
    line(solid.strokes, corner, leaf[(i + 1) % leaf.length], pen.weight, pen.role);
  });
  const steps = Math.max(1, Math.ceil(Math.abs(swing) / arcStep));
  for (let i = 0; i < steps; i++) {
    const [a, b] = [i, i + 1].map((step) => leafAt(closed + (swing * step) / steps, low));
    line(solid.strokes, a, b, fine.weight, fine.role);
  }
}

const along = (a: FloorPlace, b: FloorPlace, share: number): FloorPlace => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
];

/** Outwards from a wall of a room whose corners run counter-clockwise: to its right, of length 1. */
function outward(from: FloorPlace, to: FloorPlace): FloorPlace {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[1] - from[1]) / length, (from[0] - to[0]) / length];
}

/** Across the wall from a place on its inner face. */
function beyond([x, y]: FloorPlace, from: FloorPlace, to: FloorPlace): FloorPlace {
  const [outX, outY] = outward(from, to);
  return [x + thickness * outX, y + thickness * outY];
}

/** A mitre longer than this many thicknesses, at a very sharp corner, is cut off. */
const longestMitre = 3;

/** Where the outer faces of the two walls at a corner meet. */
function outside(corners: readonly FloorPlace[], index: number): FloorPlace {
  const count = corners.length;
  const here = corners[index];
  const [ax, ay] = outward(corners[(index + count - 1) % count], here);
  const [bx, by] = outward(here, corners[(index + 1) % count]);
  const times = Math.min(thickness * longestMitre, thickness / Math.max(0.01, (1 + ax * bx + ay * by) / 2));
  return [here[0] + (times * (ax + bx)) / 2, here[1] + (times * (ay + by)) / 2];
}
