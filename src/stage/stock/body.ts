import type { Vec3 } from '../../core/math/vec3.ts';
import type { Vehicle } from '../../core/stock/types.ts';
import { line } from '../ink/strokes.ts';
import { face, stroke } from '../palette.ts';
import { box, drum, prism, type Span } from '../solid/shapes.ts';
import { emptySolid, outline, type Pen, place, polygon, type Solid } from '../solid/solid.ts';
import { type BodySizes, bodySizes } from './bodySizes.ts';
import { drawEngine } from './engine.ts';

/**
 * A body drawn twice: `far` with a dark mass for its running gear; close by its `shell` with every fine line, and apart from it
 * its `fittings` (headstocks, buffer barrels, axle guards), which the lens shows without the shell.
 */
export interface BodyParts {
  readonly far: Solid;
  readonly shell: Solid;
  readonly fittings: Solid;
}

export const edgePen: Pen = { weight: 1.1, role: stroke.edge };
export const finePen: Pen = { weight: 0.7, role: stroke.fine };
const nearEdge: Pen = { weight: 0.9, role: stroke.metal };

const frameRoles = { top: face.frameTop, side: face.frame, end: face.frame, under: face.frame };

/** Lifts flat marks off the face they are drawn on, m. */
const proud = 0.00012;

/** Draws a vehicle's body in its own axes: all that moves with the body, without running gear, couplings and buffer heads. */
export function bodyParts(vehicle: Vehicle): BodyParts {
  const sizes = bodySizes(vehicle);
  const body = emptySolid();
  const detail = emptySolid();
  const { front, rear, halfWidth: w, floor, frame } = sizes;
  box(body, [rear, front], [-w * 0.9, w * 0.9], [frame, floor], frameRoles, edgePen);
  switch (sizes.form) {
    case 'centre-cab':
    case 'tank-engine':
      drawEngine(body, detail, sizes);
      break;
    case 'open':
    case 'tender':
      drawOpen(body, detail, sizes);
      break;
    default:
      drawRoofed(body, detail, sizes);
  }
  const fittings = emptySolid();
  axleGuards(fittings, vehicle, sizes);
  bufferStocks(fittings, vehicle, sizes);
  const far = emptySolid();
  place(far, body, [0, 0, 0]);
  runningMass(far, vehicle, sizes);
  const shell = emptySolid();
  place(shell, body, [0, 0, 0]);
  place(shell, detail, [0, 0, 0]);
  return { far, shell, fittings };
}

/** Coach or van: sides, a curved roof in flat facets, ends. */
function drawRoofed(far: Solid, near: Solid, sizes: BodySizes): void {
  const { front, rear, halfWidth: w, top, floor } = sizes;
  const rise = Math.min(0.3 * w, 0.2 * (top - floor));
  const eaves = top - rise;
  const section: [number, number][] = [
    [-w, floor],
    [w, floor],
    [w, eaves],
    [0.78 * w, eaves + 0.62 * rise],
    [0.36 * w, top],
    [-0.36 * w, top],
    [-0.78 * w, eaves + 0.62 * rise],
    [-w, eaves],
  ];
  const sides = new Set([1, 7]);
  prism(
    far,
    'x',
    section,
    [rear, front],
    {
      flank: (i) => (i === 0 ? face.frame : sides.has(i) ? face.side : face.top),
      end: face.end,
      inked: (i) => i === 0 || i === 1 || i === 2 || i === 7,
    },
    edgePen,
  );
  for (const side of [-1, 1] as const) {
    if (sizes.form === 'coach') windows(far, sizes, side, eaves);
    else planks(near, sizes, side, eaves);
    const y = side * (w + proud);
    const waist = floor + 0.42 * (eaves - floor);
    fine(near, [rear, y, waist], [front, y, waist]);
    fine(near, [rear, y, eaves - 0.06 * (eaves - floor)], [front, y, eaves - 0.06 * (eaves - floor)]);
  }
  for (const x of [rear - proud, front + proud]) {
    for (const y of [-0.5 * w, 0, 0.5 * w]) fine(near, [x, y, floor], [x, y, eaves]);
  }
}

function fine(solid: Solid, a: Vec3, b: Vec3): void {
  line(solid.strokes, a, b, finePen.weight, finePen.role);
}

/** A flat mark on a side: corners of a rectangle, facing outward. */
export function panel(solid: Solid, x: Span, y: number, z: Span, role: number, pen: Pen | null): void {
  const corners: Vec3[] = [
    [x[0], y, z[0]],
    [x[1], y, z[0]],
    [x[1], y, z[1]],
    [x[0], y, z[1]],
  ];
  if (y > 0) corners.reverse();
  polygon(solid, corners, role);
  if (pen !== null) outline(solid, corners, pen);
}

/** About how far windows are apart, and their share of that, by the body's width. */
const windowPitch = 0.62;
const windowShare = 0.66;

function windows(solid: Solid, sizes: BodySizes, side: -1 | 1, eaves: number): void {
  const { front, rear, halfWidth: w, floor } = sizes;
  const doors = 0.5 * w;
  const length = front - rear - 2 * doors;
  const count = Math.max(1, Math.round(length / (windowPitch * 2 * w)));
  const pitch = length / count;
  const z: Span = [floor + 0.46 * (eaves - floor), floor + 0.84 * (eaves - floor)];
  for (let i = 0; i < count; i++) {
    const middle = rear + doors + (i + 0.5) * pitch;
    const half = (pitch * windowShare) / 2;
    panel(solid, [middle - half, middle + half], side * (w + proud), z, face.glass, null);
  }
}

function planks(near: Solid, sizes: BodySizes, side: -1 | 1, eaves: number): void {
  const { front, rear, halfWidth: w, floor } = sizes;
  const count = Math.max(3, Math.round((front - rear) / (0.34 * w)));
  const y = side * (w + proud);
  for (let i = 1; i < count; i++) {
    const x = rear + ((front - rear) * i) / count;
    fine(near, [x, y, floor + 0.03 * (eaves - floor)], [x, y, eaves - 0.06 * (eaves - floor)]);
  }
  const middle = (front + rear) / 2;
  for (const x of [middle - 0.55 * w, middle + 0.55 * w]) {
    line(near.strokes, [x, y, floor], [x, y, eaves], edgePen.weight, stroke.edge);
  }
}

/** Open wagon or tender: four walls and what lies between them. */
function drawOpen(far: Solid, near: Solid, sizes: BodySizes): void {
  const { front, rear, halfWidth: w, top, floor } = sizes;
  const wall = 0.07 * w;
  const load = top - 0.3 * (top - floor);
  const outer: Vec3[] = [
    [rear, -w, top],
    [front, -w, top],
    [front, w, top],
    [rear, w, top],
  ];
  const inner: Vec3[] = [
    [rear + wall, -w + wall, top],
    [front - wall, -w + wall, top],
    [front - wall, w - wall, top],
    [rear + wall, w - wall, top],
  ];
  const lower = (ring: Vec3[], z: number): Vec3[] => ring.map(([x, y]): Vec3 => [x, y, z]);
  const foot = lower(outer, floor);
  const bed = lower(inner, load);
  polygon(far, bed, face.inside);
  polygon(far, [...foot].reverse(), face.frame);
  for (let i = 0; i < 4; i++) {
    const j = (i + 1) % 4;
    polygon(far, [foot[i], foot[j], outer[j], outer[i]], i % 2 === 0 ? face.side : face.end);
    polygon(far, [outer[i], outer[j], inner[j], inner[i]], face.top);
    polygon(far, [bed[j], bed[i], inner[i], inner[j]], face.inside);
  }
  outline(far, outer, edgePen);
  outline(far, foot, edgePen);
  for (let i = 0; i < 4; i++) outline(far, [foot[i], outer[i]], edgePen);
  outline(near, inner, { weight: 0.8, role: stroke.edge });
  for (const y of [-w - proud, w + proud]) {
    for (const share of [0.25, 0.5, 0.75]) {
      fine(near, [rear, y, floor + share * (top - floor)], [front, y, floor + share * (top - floor)]);
    }
    const posts = Math.max(2, Math.round((front - rear) / (1.1 * w)));
    for (let i = 0; i <= posts; i++) {
      const x = rear + (front - rear) * (0.03 + 0.94 * (i / posts));
      line(near.strokes, [x, y, floor], [x, y, top - 0.0006], 0.9, stroke.edge);
    }
  }
}

/** What wheels and axles look like from afar: dark blocks down to the rail. */
function runningMass(far: Solid, vehicle: Vehicle, { frame }: BodySizes): void {
  const r = vehicle.wheelRadius;
  const half = vehicle.pivotSpacing / 2;
  const beyond = r + (vehicle.bogies ? vehicle.rigidWheelbase / 2 : 0);
  const y: Span = [-vehicle.gauge * 0.62, vehicle.gauge * 0.62];
  const blocks: Span[] = vehicle.bogies
    ? [
        [-half - beyond, -half + beyond],
        [half - beyond, half + beyond],
      ]
    : [[-half - beyond, half + beyond]];
  for (const x of blocks) box(far, x, y, [0.1 * r, frame], frameRoles, null);
}

/** The plates that hold the axles of a rigid frame. */
function axleGuards(near: Solid, vehicle: Vehicle, sizes: BodySizes): void {
  if (vehicle.bogies) return;
  const r = vehicle.wheelRadius;
  const y = vehicle.gauge / 2 + 0.62 * r;
  for (const x of [-vehicle.pivotSpacing / 2, vehicle.pivotSpacing / 2]) {
    for (const side of [-1, 1]) {
      const across: Span = side < 0 ? [-y - 0.22 * r, -y] : [y, y + 0.22 * r];
      box(near, [x - 0.42 * r, x + 0.42 * r], across, [0.62 * r, sizes.frame], frameRoles, nearEdge);
      box(near, [x - 1.5 * r, x + 1.5 * r], across, [sizes.frame - 0.28 * r, sizes.frame], frameRoles, nearEdge);
    }
  }
}

/** Headstock and the fixed barrels of the buffers. Their heads move and are drawn apart. */
function bufferStocks(near: Solid, vehicle: Vehicle, sizes: BodySizes): void {
  for (const end of ['front', 'rear'] as const) {
    const { buffers } = vehicle[end];
    const x = end === 'front' ? sizes.front : sizes.rear;
    const out = end === 'front' ? 1 : -1;
    const span = (a: number, b: number): Span => (out > 0 ? [x + a, x + b] : [x - b, x - a]);
    const low = Math.min(sizes.frame, (buffers?.height ?? sizes.floor) - 0.0024);
    box(
      near,
      span(-0.0012, 0.0009),
      [-0.92 * sizes.halfWidth, 0.92 * sizes.halfWidth],
      [low, Math.max(sizes.floor, (buffers?.height ?? 0) + 0.0022)],
      frameRoles,
      nearEdge,
    );
    if (buffers === null) continue;
    for (const side of [-0.5, 0.5]) {
      const centre: [number, number] = [side * buffers.spacing, buffers.height];
      const radius = 0.3 * buffers.headHeight;
      drum(
        near,
        'x',
        centre,
        radius * 1.35,
        span(0.0009, 0.0016),
        10,
        { flank: face.metalDark, end: face.metalDark },
        nearEdge,
      );
      drum(
        near,
        'x',
        centre,
        radius,
        span(0.0016, 0.55 * buffers.length),
        10,
        { flank: face.metalDark, end: face.metal },
        nearEdge,
      );
    }
  }
}
