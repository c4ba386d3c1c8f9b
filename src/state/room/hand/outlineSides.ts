import { type SceneCorner, sideMm, tidy } from '../../../scene/index.ts';
import { type Snapping, toStep } from '../../route/snapping.ts';

/** Sides whose directions differ by less than about 12 degrees do not cut each other where a hand would have it. */
const leastCut = 0.2;

/**
 * An outline with a side moved along with a hand, square to itself: the sides before and after it keep their directions and grow or shrink, and so the corners
 * keep their angles. `by`: how far the hand went, mm.
 */
export function slideSide(
  corners: readonly SceneCorner[],
  side: number,
  by: SceneCorner,
  snap: Snapping,
): readonly SceneCorner[] & SceneCorner[] {
  const count = corners.length;
  const next = (side + 1) % count;
  const [a, b] = [corners[side], corners[next]];
  const size = sideMm(corners, side);
  const [ux, uy] = [(b.xMm - a.xMm) / size, (b.yMm - a.yMm) / size];
  const [nx, ny] = [-uy, ux];
  // A wall square to the room comes to lie on a whole step, any other goes by whole steps.
  const square = ux === 0 ? a.xMm * nx : uy === 0 ? a.yMm * ny : 0;
  const far = toStep(square + by.xMm * nx + by.yMm * ny, snap.lengthMm) - square;
  const slid = (corner: SceneCorner, towards: SceneCorner): SceneCorner => {
    const length = Math.hypot(towards.xMm - corner.xMm, towards.yMm - corner.yMm);
    const [vx, vy] = [(towards.xMm - corner.xMm) / length, (towards.yMm - corner.yMm) / length];
    const cut = vx * nx + vy * ny;
    const [wx, wy] = Math.abs(cut) < leastCut ? [nx, ny] : [vx / cut, vy / cut];
    return { xMm: tidy(corner.xMm + far * wx), yMm: tidy(corner.yMm + far * wy) };
  };
  return corners
    .with(side, slid(a, corners[(side + count - 1) % count]))
    .with(next, slid(b, corners[(next + 1) % count]));
}

/** Where along a side of an outline a place lies, mm. */
export function alongSide(corners: readonly SceneCorner[], side: number, { xMm, yMm }: SceneCorner): number {
  const [a, b] = [corners[side], corners[(side + 1) % corners.length]];
  return ((xMm - a.xMm) * (b.xMm - a.xMm) + (yMm - a.yMm) * (b.yMm - a.yMm)) / sideMm(corners, side);
}

/** How far a place is from a side of an outline, mm. */
export function offSide(corners: readonly SceneCorner[], side: number, place: SceneCorner): number {
  const [a, b] = [corners[side], corners[(side + 1) % corners.length]];
  const size = sideMm(corners, side);
  const along = Math.min(size, Math.max(0, alongSide(corners, side, place))) / size;
  return Math.hypot(place.xMm - a.xMm - along * (b.xMm - a.xMm), place.yMm - a.yMm - along * (b.yMm - a.yMm));
}

/** The side of an outline that a place is nearest to. */
export const nearestSide = (corners: readonly SceneCorner[], place: SceneCorner): number =>
  corners.reduce((best, _, side) => (offSide(corners, side, place) < offSide(corners, best, place) ? side : best), 0);
