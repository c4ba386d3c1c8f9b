import { face, stroke } from '../palette.ts';
import { box, drum, prism, type Span } from '../solid/shapes.ts';
import type { Pen, Solid } from '../solid/solid.ts';
import type { BodySizes } from './bodySizes.ts';

const pen: Pen = { weight: 1.1, role: stroke.edge };
const thin: Pen = { weight: 0.7, role: stroke.fine };
const roles = { top: face.top, side: face.side, end: face.end, under: face.frame };

/** Draws what stands on an engine's frame: an invented form, in the proportions of its sizes. */
export function drawEngine(far: Solid, near: Solid, sizes: BodySizes): void {
  const { front, rear, halfWidth: w, floor } = sizes;
  // Running plate, a little wider than the frame.
  box(far, [rear, front], [-w * 0.96, w * 0.96], [floor, floor + 0.03 * sizes.top], roles, pen);
  if (sizes.form === 'centre-cab') drawCentreCab(far, near, sizes);
  else drawTankEngine(far, near, sizes);
}

/** A cab between two low bonnets: looks the same from both ends, since it runs both ways. */
function drawCentreCab(far: Solid, near: Solid, { front, rear, halfWidth: w, top, floor }: BodySizes): void {
  const length = front - rear;
  const plate = floor + 0.03 * top;
  const middle = (front + rear) / 2;
  const cab: Span = [middle - 0.14 * length, middle + 0.14 * length];
  const bonnetTop = plate + 0.56 * (top - plate);
  for (const span of [
    [rear + 0.045 * length, cab[0]],
    [cab[1], front - 0.045 * length],
  ] as Span[]) {
    prism(
      far,
      'x',
      [
        [-0.66 * w, plate],
        [0.66 * w, plate],
        [0.66 * w, bonnetTop - 0.14 * w],
        [0.5 * w, bonnetTop],
        [-0.5 * w, bonnetTop],
        [-0.66 * w, bonnetTop - 0.14 * w],
      ],
      span,
      {
        flank: (i) => (i === 1 || i === 5 ? face.side : face.top),
        end: face.end,
        inked: (i) => i === 0 || i === 1 || i === 3 || i === 4,
      },
      pen,
    );
    louvres(near, span, 0.66 * w, [plate + 0.25 * (bonnetTop - plate), plate + 0.72 * (bonnetTop - plate)]);
  }
  box(far, cab, [-0.88 * w, 0.88 * w], [plate, top - 0.05 * top], roles, pen);
  box(
    far,
    [cab[0] - 0.012 * length, cab[1] + 0.012 * length],
    [-0.94 * w, 0.94 * w],
    [top - 0.05 * top, top],
    roles,
    pen,
  );
  cabWindows(far, cab, 0.88 * w, [plate + 0.58 * (top - plate), plate + 0.86 * (top - plate)]);
}

/** Boiler ahead, tanks beside it, cab behind. */
function drawTankEngine(far: Solid, near: Solid, { front, rear, halfWidth: w, top, floor }: BodySizes): void {
  const length = front - rear;
  const plate = floor + 0.03 * top;
  const cab: Span = [rear + 0.1 * length, rear + 0.34 * length];
  const radius = Math.min(0.48 * w, 0.34 * (top - plate));
  const axis = plate + 0.06 * top + radius;
  const boiler: Span = [cab[1], front - 0.06 * length];
  const skin = { flank: face.side, end: face.end };
  drum(far, 'x', [0, axis], radius, boiler, 12, { flank: face.top, end: face.end }, pen);
  drum(far, 'x', [0, axis], radius * 1.08, [boiler[1] - 0.1 * length, boiler[1] + 0.01 * length], 12, skin, pen);
  const crown = axis + radius;
  drum(far, 'z', [boiler[1] - 0.05 * length, 0], 0.2 * w, [crown - 0.1 * radius, top], 10, skin, pen);
  drum(
    far,
    'z',
    [cab[1] + 0.22 * length, 0],
    0.26 * w,
    [crown - 0.1 * radius, crown + 0.45 * (top - crown)],
    10,
    skin,
    pen,
  );
  for (const side of [-1, 1]) {
    const y: Span = side < 0 ? [-0.9 * w, -0.5 * w] : [0.5 * w, 0.9 * w];
    box(far, [cab[1], cab[1] + 0.36 * length], y, [plate, axis + 0.35 * radius], roles, pen);
  }
  box(far, cab, [-0.9 * w, 0.9 * w], [plate, top - 0.06 * top], roles, pen);
  box(
    far,
    [cab[0] - 0.012 * length, cab[1] + 0.012 * length],
    [-0.95 * w, 0.95 * w],
    [top - 0.06 * top, top - 0.01 * top],
    roles,
    pen,
  );
  box(far, [rear + 0.02 * length, cab[0]], [-0.8 * w, 0.8 * w], [plate, plate + 0.4 * (top - plate)], roles, pen);
  cabWindows(far, cab, 0.9 * w, [plate + 0.5 * (top - plate), plate + 0.78 * (top - plate)]);
  louvres(near, [cab[1], cab[1] + 0.36 * length], 0.9 * w, [plate + 0.1 * radius, axis + 0.25 * radius]);
}

/** Lifts flat marks off the face they are drawn on, m. */
const proud = 0.00012;

function cabWindows(solid: Solid, cab: Span, w: number, z: Span): void {
  const length = cab[1] - cab[0];
  const depth = 0.0006;
  const glass = { top: face.glass, side: face.glass, end: face.glass };
  for (const side of [-1, 1]) {
    const y: Span = side < 0 ? [-w - proud, -w + depth] : [w - depth, w + proud];
    box(solid, [cab[0] + 0.16 * length, cab[0] + 0.46 * length], y, z, glass, null);
    box(solid, [cab[0] + 0.54 * length, cab[0] + 0.84 * length], y, z, glass, null);
  }
  for (const x of [
    [cab[0] - proud, cab[0] + depth],
    [cab[1] - depth, cab[1] + proud],
  ] as Span[]) {
    box(solid, x, [-0.82 * w, -0.3 * w], z, glass, null);
    box(solid, x, [0.3 * w, 0.82 * w], z, glass, null);
  }
}

function louvres(near: Solid, span: Span, w: number, z: Span): void {
  const count = 7;
  for (const y of [-w - proud, w + proud]) {
    for (let i = 1; i < count; i++) {
      const x = span[0] + ((span[1] - span[0]) * i) / count;
      near.strokes.from.push(x, y, z[0]);
      near.strokes.to.push(x, y, z[1]);
      near.strokes.style.push(thin.weight, 0, thin.role);
      near.strokes.run.push(0, 0);
    }
  }
}
