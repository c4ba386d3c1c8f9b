import type { Vec3 } from '../../core/math/vec3.ts';
import type { Pixel } from '../view/shown.ts';
import type { Post } from './posts.ts';

/** The support whose post a hand points at, of those that the file has: nearest to a pixel within `reach` px of its rods or its head; null when none is. */
export function pickPost(
  posts: readonly Post[],
  pixel: Pixel,
  reach: number,
  toPixel: (place: Vec3) => Pixel | null,
): { readonly trackId: string; readonly index: number } | null {
  let best: { readonly trackId: string; readonly index: number } | null = null;
  let least = reach;
  for (const { trackId, index, centre, rods } of posts) {
    if (index === null) continue;
    const head = toPixel(centre);
    const lines = rods.map(({ x, y, foot, head: top }) => [toPixel([x, y, foot]), toPixel([x, y, top])] as const);
    for (const [a, b] of [[head, head] as const, ...lines]) {
      if (a === null || b === null) continue;
      const away = awayFromLine(pixel, a, b);
      if (away >= least) continue;
      least = away;
      best = { trackId, index };
    }
  }
  return best;
}

function awayFromLine({ x, y }: Pixel, a: Pixel, b: Pixel): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const size = dx * dx + dy * dy;
  const share = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / size));
  return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
}
