import type { Vec3 } from '../../core/math/vec3.ts';
import type { Structure } from '../../core/risks/types.ts';
import { line } from '../ink/strokes.ts';
import { type Pen, polygon, type Solid } from '../solid/solid.ts';

/** Roles of the faces of structures. */
export const structureFace = { top: 0, side: 1, under: 2 } as const;

/** Pieces of one wall differ in height by less than this from one to the next, m: it is level in steps of a centimetre of track. */
const sameHeight = 0.004;

/** Corners are the same within this, m. */
const cornerGrid = 1e-5;

/**
 * Adds structures as prisms. A wall along a track comes in many pieces: where two of a name share a side at nearly one height there is no face and no
 * line between them.
 */
export function drawStructures(solid: Solid, structures: readonly Structure[], pen: Pen): void {
  const sides = new Map<string, Structure[]>();
  for (const structure of structures) {
    structure.outline.forEach((_, i) => {
      const key = sideKey(structure, i);
      sides.set(key, [...(sides.get(key) ?? []), structure]);
    });
  }
  for (const structure of structures) {
    const seams = structure.outline.map((_, i) =>
      (sides.get(sideKey(structure, i)) ?? []).some(
        (other) =>
          other !== structure &&
          Math.abs(other.top - structure.top) < sameHeight &&
          Math.abs(other.bottom - structure.bottom) < sameHeight,
      ),
    );
    drawPrism(solid, structure, seams, pen);
  }
}

function drawPrism(solid: Solid, { outline, bottom, top }: Structure, seams: readonly boolean[], pen: Pen): void {
  const count = outline.length;
  const high = outline.map(([x, y]): Vec3 => [x, y, top]);
  const low = outline.map(([x, y]): Vec3 => [x, y, bottom]);
  const stroke = (a: Vec3, b: Vec3): void => line(solid.strokes, a, b, pen.weight, pen.role);
  polygon(solid, high, structureFace.top);
  polygon(solid, low.toReversed(), structureFace.under);
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % count;
    if (seams[i]) continue;
    polygon(solid, [low[i], low[next], high[next], high[i]], structureFace.side);
    stroke(low[i], low[next]);
    stroke(high[i], high[next]);
    if (!seams[(i + count - 1) % count]) stroke(low[i], high[i]);
  }
}

/** The same for both pieces that share a side, whichever way each runs along it. */
function sideKey({ name, outline }: Structure, index: number): string {
  const ends = [outline[index], outline[(index + 1) % outline.length]].map(([x, y]) =>
    [x, y].map((value) => Math.round(value / cornerGrid)).join(','),
  );
  return [name, ...ends.sort()].join(' ');
}
