import { placedSupports, type Scene, supportsWith, tidy } from '../../scene/index.ts';
import { fileMm, trialParts, withTrack } from './parts.ts';

/** Raises the support of this index (from 0) by `by` metres, or lowers it; null without such a support. */
export function setSupport(scene: Scene, trialId: string, support: number, by: number): Scene | null {
  const parts = trialParts(scene, trialId);
  const supports = parts?.track.supports;
  if (parts === null || supports === undefined) return null;
  const placed = placedSupports(parts.track)[support];
  if (placed === undefined) return null;
  return withTrack(scene, {
    ...parts.track,
    supports: supportsWith(supports, support, tidy(placed.offMm + fileMm(by))),
  });
}
