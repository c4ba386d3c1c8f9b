import type { Vec3 } from '../../core/math/vec3.ts';
import type { Vehicle } from '../../core/stock/types.ts';
import { line } from '../ink/strokes.ts';
import { face, stroke } from '../palette.ts';
import { box, circle, prism, type Span } from '../solid/shapes.ts';
import { emptySolid, type Pen, polygon, type Solid } from '../solid/solid.ts';

const pen: Pen = { weight: 0.9, role: stroke.metal };
const frameRoles = { top: face.frameTop, side: face.frame, end: face.frame, under: face.frame };

/** Corners of a wheel's circle: round enough under the lens, where a wheel is about 150 pixels across. */
const wheelSides = 28;

/** Flange: depth and width, and width of the tread, in gauges. */
const flangeDepth = 0.055;
const flangeWidth = 0.045;
const flangePlay = 0.03;
const treadWidth = 0.13;

/** A wheelset about its axle: y along the axle, the rail top a wheel's radius below. */
export function wheelset(vehicle: Vehicle): Solid {
  const solid = emptySolid();
  const { wheelRadius: r, gauge } = vehicle;
  for (const side of [-1, 1]) {
    const inner = side * (gauge / 2 - (flangePlay + flangeWidth) * gauge);
    const flange = side * (gauge / 2 - flangePlay * gauge);
    const outer = side * (gauge / 2 + treadWidth * gauge);
    ring(solid, r + flangeDepth * gauge, order(inner, flange), face.metal);
    ring(solid, r, order(flange, outer), face.metal);
    wheelFace(solid, r, outer, side);
    disc(solid, r + flangeDepth * gauge, inner, -side, face.metalDark);
    disc(solid, r + flangeDepth * gauge, flange, side, face.metal);
    for (const [radius, y] of [
      [r + flangeDepth * gauge, flange],
      [r + flangeDepth * gauge, inner],
      [r, outer],
    ]) {
      inkCircle(solid, radius, y, pen.weight, stroke.metal);
    }
    inkCircle(solid, 0.8 * r, outer + side * proud, 0.8, stroke.fine);
    for (let spoke = 0; spoke < 6; spoke++) {
      const angle = (Math.PI * spoke) / 3;
      line(
        solid.strokes,
        onWheel(0.26 * r, angle, outer + side * proud),
        onWheel(0.8 * r, angle, outer + side * proud),
        0.8,
        stroke.fine,
      );
    }
  }
  prism(
    solid,
    'y',
    circle(0.16 * r, 8),
    [-gauge / 2, gauge / 2],
    { flank: () => face.metalDark, end: face.metalDark, inked: () => false },
    null,
  );
  return solid;
}

/** Lifts flat marks off the face they are drawn on, m. */
const proud = 0.00006;

const order = (a: number, b: number): Span => (a < b ? [a, b] : [b, a]);

const onWheel = (radius: number, angle: number, y: number): Vec3 => [
  radius * Math.cos(angle),
  y,
  radius * Math.sin(angle),
];

/** The flank of a short cylinder about the axle. */
function ring(solid: Solid, radius: number, y: Span, role: number): void {
  for (let i = 0; i < wheelSides; i++) {
    const a = (2 * Math.PI * i) / wheelSides;
    const b = (2 * Math.PI * (i + 1)) / wheelSides;
    polygon(
      solid,
      [onWheel(radius, b, y[0]), onWheel(radius, a, y[0]), onWheel(radius, a, y[1]), onWheel(radius, b, y[1])],
      role,
    );
  }
}

function disc(solid: Solid, radius: number, y: number, facing: number, role: number): void {
  const corners = Array.from({ length: wheelSides }, (_, i) => onWheel(radius, (2 * Math.PI * i) / wheelSides, y));
  // Growing angle turns from x to z, which is clockwise seen from the left (+y).
  if (facing > 0) corners.reverse();
  polygon(solid, corners, role);
}

function wheelFace(solid: Solid, r: number, y: number, side: number): void {
  disc(solid, r, y, side, face.wheel);
  disc(solid, 0.24 * r, y + side * proud, side, face.hub);
}

function inkCircle(solid: Solid, radius: number, y: number, weight: number, role: number): void {
  for (let i = 0; i < wheelSides; i++) {
    const a = (2 * Math.PI * i) / wheelSides;
    const b = (2 * Math.PI * (i + 1)) / wheelSides;
    line(solid.strokes, onWheel(radius, a, y), onWheel(radius, b, y), weight, role);
  }
}

/** A bogie's frame about its pivot at rail level: x along the track there. */
export function bogieFrame(vehicle: Vehicle): Solid {
  const solid = emptySolid();
  const { wheelRadius: r, gauge, rigidWheelbase, bogieAxles } = vehicle;
  const third = bogieAxles === 3;
  const half = rigidWheelbase / 2 + 0.75 * r;
  const y = gauge / 2 + 0.62 * r;
  for (const side of [-1, 1]) {
    const across = order(side * y, side * (y + 0.24 * r));
    box(solid, [-half, half], across, [1.25 * r, 1.7 * r], frameRoles, pen);
    for (const axle of [-rigidWheelbase / 2, ...(third ? [0] : []), rigidWheelbase / 2]) {
      box(solid, [axle - 0.4 * r, axle + 0.4 * r], across, [0.65 * r, 1.25 * r], frameRoles, pen);
    }
    // A middle axle's box stands where the springs of two axles do.
    if (!third) box(solid, [-0.55 * r, 0.55 * r], across, [0.8 * r, 1.25 * r], frameRoles, pen);
  }
  box(solid, [-0.5 * r, 0.5 * r], [-y, y], [1.3 * r, 1.75 * r], frameRoles, null);
  return solid;
}

/** Where a vehicle's axles stand, as chainages from its running points: [from the rear or front point, offset m]. */
export function axleOffsets(vehicle: Vehicle): { readonly end: 'front' | 'rear' | 'middle'; readonly by: number }[] {
  if (vehicle.bogies) {
    const half = vehicle.rigidWheelbase / 2;
    return (['front', 'rear'] as const).flatMap((end) => [
      { end, by: half },
      ...(vehicle.bogieAxles === 3 ? [{ end, by: 0 }] : []),
      { end, by: -half },
    ]);
  }
  const axles: { end: 'front' | 'rear' | 'middle'; by: number }[] = [
    { end: 'front', by: 0 },
    { end: 'rear', by: 0 },
  ];
  // An engine has wheels between its end axles where there is room for them.
  if (vehicle.kind !== 'wagon' && vehicle.kind !== 'coach' && vehicle.pivotSpacing > 4.4 * vehicle.wheelRadius) {
    axles.push({ end: 'middle', by: 0 });
  }
  return axles;
}
