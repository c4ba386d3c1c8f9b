import { placedSupports, type Scene, type SceneSupports } from '../../scene/index.ts';
import { fileMm, tidy, trialParts, withTrack } from './parts.ts';

/** Raises the support of this index (from 0) by `by` metres, or lowers it; null without such a support. */
export function setSupport(scene: Scene, trialId: string, support: number, by: number): Scene | null {
  const parts = trialParts(scene, trialId);
  const supports = parts?.track.supports;
  if (parts === null || supports === undefined) return null;
  const placed = placedSupports(parts.track)[support];
  if (placed === undefined) return null;
  return withTrack(scene, { ...parts.track, supports: moved(supports, support, tidy(placed.offMm + fileMm(by))) });
}

function moved(supports: SceneSupports, index: number, offMm: number): SceneSupports {
  if (Array.isArray(supports)) {
    return supports.map((entry, at) => {
      if (at !== index) return entry;
      const { offMm: _old, ...place } = entry;
      return offMm === 0 ? place : { ...place, offMm };
    });
  }
  const others = (supports.off ?? []).filter((entry) => entry.support !== index + 1);
  if (offMm === 0) return { ...supports, off: others };
  const off = [...others, { support: index + 1, byMm: offMm }].sort((a, b) => a.support - b.support);
  return { ...supports, off };
}
