import { placedSupports, type Scene, type SceneTrack, supportsWith, tidy } from '../../scene/index.ts';
import { fileMm, withTrack } from './parts.ts';

/** Raises the support of this index (from 0) by `by` metres, or lowers it; null without such a support. */
export function setSupport(scene: Scene, track: SceneTrack, support: number, by: number): Scene | null {
  const { supports } = track;
  if (supports === undefined) return null;
  const placed = placedSupports(track)[support];
  if (placed === undefined) return null;
  return withTrack(scene, {
    ...track,
    supports: supportsWith(supports, support, tidy(placed.offMm + fileMm(by))),
  });
}
