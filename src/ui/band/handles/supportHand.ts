import { moveSupports, placedSupports, type SupportSpan } from '../../../state/routeEdits/index.ts';
import type { Comb } from '../comb.ts';

type Scene = Parameters<typeof moveSupports>[0];

/** A support to its new height, and with it the chosen ones that it is one of, each by as much. */
export function moveWith(scene: Scene, trackId: string, index: number, offMm: number, span: SupportSpan | null) {
  const track = scene.tracks.find(({ id }) => id === trackId);
  const now = (track && placedSupports(track)[index]?.offMm) ?? 0;
  return moveSupports(scene, trackId, span ?? { from: index, to: index }, offMm - now);
}

/** Index of the support whose tooth stands nearest to x, px; `otherwise` without a comb. */
export function nearestTooth(comb: Comb | null, x: number, otherwise: number): number {
  let [best, gap] = [otherwise, Number.POSITIVE_INFINITY];
  for (const tooth of comb?.teeth ?? []) {
    if (Math.abs(tooth.x - x) >= gap) continue;
    [best, gap] = [Number.parseInt(tooth.key, 10), Math.abs(tooth.x - x)];
  }
  return best;
}
