import { clearHeight } from '../../core/stock/index.ts';
import { passesOf } from '../passes.ts';
import type { CompiledScene } from '../types.ts';
import { collectionOf } from './collection.ts';
import { nearestNorm } from './nearestNorm.ts';
import type { HeadroomFact } from './types.ts';

/** One fact for every track under another, or under itself: the tightest place of all, as built. */
export function headroom(compiled: CompiledScene): HeadroomFact[] {
  const { tallest } = collectionOf(compiled.scene);
  const scale = nearestNorm(compiled.scene.scale.gaugeMm);
  const norm = clearHeight(scale === 'II' ? 'I' : scale, false);
  return [...compiled.tracks.keys()].flatMap((trackId): HeadroomFact[] => {
    const tightest = new Map<string, { readonly chainage: number; readonly clear: number }>();
    for (const { chainage, above, over, rail } of passesOf(compiled, trackId)) {
      if (above === null || over === null) continue;
      const clear = above - rail;
      if (clear < (tightest.get(over)?.clear ?? Number.POSITIVE_INFINITY)) tightest.set(over, { chainage, clear });
    }
    return [...tightest].map(([over, { chainage, clear }]) => ({
      kind: 'headroom',
      trackId,
      chainage,
      from: chainage,
      to: chainage,
      weight: clear < tallest.bodyHeight ? 'wrong' : clear < norm ? 'near' : 'note',
      value: clear,
      limit: tallest.bodyHeight,
      edit: null,
      over,
      vehicle: tallest.name,
      norm,
    }));
  });
}
