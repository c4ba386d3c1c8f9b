import type { Buffers, Coupling } from '../../core/stock/types.ts';
import { face, stroke } from '../palette.ts';
import { box, circle, drum, prism } from '../solid/shapes.ts';
import { emptySolid, type Pen, type Solid } from '../solid/solid.ts';

const pen: Pen = { weight: 1, role: stroke.metal };
const metal = { top: face.metal, side: face.metal, end: face.metal, under: face.metalDark };
const dark = { top: face.metalDark, side: face.metalDark, end: face.metalDark };

/**
 * One half of a coupling about its pivot: x towards the mate, the head's middle at height 0, its contact face at
 * x = reach with the facing height that the risks reckon with. The forms are plain ones of each family.
 */
export function couplingHalf(coupling: Coupling): Solid {
  const solid = emptySolid();
  const { reach, facingHeight: high } = coupling;
  const half = high / 2;
  const headLength = Math.min(0.45 * reach, Math.max(0.0032, 1.15 * high));
  const shankHalf = Math.min(0.28 * high, 0.0009);
  const neck = reach - headLength;
  const pin = Math.min(1.9 * shankHalf, half);
  const shank = (to: number): void => box(solid, [-0.0012, to], [-0.0011, 0.0011], [-shankHalf, shankHalf], metal, pen);
  drum(solid, 'z', [0, 0], 0.0011, [-pin, pin], 10, { flank: face.metalDark, end: face.metal }, pen);
  switch (coupling.kind) {
    case 'knuckle':
      shank(neck);
      knuckle(solid, neck, reach, half);
      break;
    case 'hook-and-bar':
      shank(neck);
      box(solid, [neck, reach - 0.0008], [-0.0018, 0.0018], [-half, half], metal, pen);
      box(solid, [reach - 0.0008, reach], [-0.0058, 0.0058], [-half, half], metal, pen);
      hook(solid, reach, half, 0.0011);
      break;
    case 'loop':
      shank(neck);
      box(solid, [neck, reach], [-0.0026, 0.0026], [-half, half * 0.4], metal, pen);
      wireLoop(solid, reach, half);
      break;
    case 'link':
      hook(solid, Math.max(0.0025, 0.45 * reach), Math.min(half, 0.0014), 0.0007);
      links(solid, reach);
      break;
    case 'rigid-bar':
      box(solid, [0, reach], [-0.0009, 0.0009], [-0.0009, 0.0009], metal, pen);
      break;
    case 'magnetic':
      shank(neck);
      box(solid, [neck, reach], [-0.002, 0.002], [-half, half], metal, pen);
      break;
    case 'close':
      shank(neck);
      prism(
        solid,
        'z',
        [
          [neck, -0.0016],
          [neck + 0.3 * headLength, -0.0036],
          [reach, -0.0036],
          [reach, 0.0036],
          [neck + 0.3 * headLength, 0.0036],
          [neck, 0.0016],
        ],
        [-half, half],
        { flank: () => face.metal, end: face.metal },
        pen,
      );
  }
  return solid;
}

/** A jaw in plan: the finger stands to the left, so that it passes the mate's own left finger. */
function knuckle(solid: Solid, neck: number, reach: number, half: number): void {
  const length = reach - neck;
  prism(
    solid,
    'z',
    [
      [neck, -0.0014],
      [neck + 0.35 * length, -0.0024],
      [reach + 0.25 * length, -0.003],
      [reach + 0.1 * length, -0.0014],
      [reach - 0.2 * length, -0.001],
      [reach - 0.2 * length, 0.0004],
      [reach, 0.0006],
      [reach + 0.28 * length, 0.0003],
      [reach + 0.34 * length, 0.0012],
      [reach + 0.05 * length, 0.0026],
      [neck + 0.4 * length, 0.0026],
      [neck, 0.0014],
    ],
    [-half, half],
    { flank: () => face.metal, end: face.metal },
    pen,
  );
}

/** A hook over the head: a bent bar seen from the side, `wide` half across. */
function hook(solid: Solid, reach: number, half: number, wide: number): void {
  const t = 0.0007;
  const out = 0.0024;
  const top = half + 0.0016;
  prism(
    solid,
    'y',
    [
      [half, reach - 0.003],
      [half, reach - 0.003 + t],
      [top - t, reach - 0.001],
      [top - t, reach + out - t],
      [half - 0.0004, reach + out - t],
      [half - 0.0004, reach + out],
      [top, reach + out],
      [top, reach - 0.001 - t],
    ].map(([z, x]): [number, number] => [z, x]),
    [-wide, wide],
    { flank: () => face.metalDark, end: face.metalDark },
    pen,
  );
}

/** A wire loop lying across the track, reaching over the mate's head. */
function wireLoop(solid: Solid, reach: number, half: number): void {
  const z = [half * 0.5, half * 0.5 + 0.0007] as const;
  const wide = 0.0046;
  const wire = 0.0007;
  const back = reach - 0.002;
  const out = reach + 0.0034;
  box(solid, [back, out], [-wide, -wide + wire], z, dark, pen);
  box(solid, [back, out], [wide - wire, wide], z, dark, pen);
  box(solid, [out - wire, out], [-wide, wide], z, dark, pen);
  box(solid, [back, back + wire], [-wide, wide], z, dark, pen);
}

/** Links hanging out towards the mate's hook. */
function links(solid: Solid, reach: number): void {
  const wire = 0.00045;
  const from = Math.max(0.0022, 0.4 * reach);
  for (const y of [-0.0011, 0.0011]) {
    box(solid, [from, reach + 0.001], [y - wire / 2, y + wire / 2], [-0.0014, -0.0014 + wire], dark, pen);
  }
  box(solid, [reach + 0.001 - wire, reach + 0.001], [-0.0011, 0.0011], [-0.0014, -0.0014 + wire], dark, pen);
}

/** How far behind its face a buffer's rod reaches, as a share of the buffer's length. */
const rodShare = 0.7;

/** A buffer's head and rod about the middle of its face: x outward, the face bulging to x = 0. */
export function bufferHead(buffers: Buffers): Solid {
  const solid = emptySolid();
  const { headWidth, headHeight, length } = buffers;
  const squash = headHeight / headWidth;
  const thick = Math.min(0.0006, 0.2 * length);
  const bulge = Math.min(0.0005, 0.15 * length);
  const flanks = { flank: () => face.metal, end: face.metal, inked: () => false };
  const rim = circle(headWidth / 2, 16, 0, 0, squash);
  const dome = circle(headWidth / 3, 16, 0, 0, squash);
  prism(solid, 'x', rim, [-thick - bulge, -bulge], flanks, pen);
  prism(solid, 'x', dome, [-bulge, 0], flanks, null);
  drum(
    solid,
    'x',
    [0, 0],
    0.17 * headHeight,
    [-rodShare * length, -thick - bulge],
    8,
    { flank: face.metal, end: face.metal },
    pen,
  );
  return solid;
}
