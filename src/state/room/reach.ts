import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { covers, type Scene, type SceneCorner, standingEdges } from '../../scene/index.ts';

/** A stretch of track that no hand gets to. Lengths m. */
export interface OutOfReach {
  readonly from: number;
  readonly to: number;
  /** The most that any place of it lies from the nearest edge where a person can stand. */
  readonly farthest: number;
}

/** Way between the places of a track that are looked at, m. */
const every = 0.05;

/**
 * Stretches of a track that lie further from every edge where a person can stand than the person reaches, level and straight in; in order of
 * chainage. Null where the scene does not say how far its person reaches, or where its boards are.
 */
export function outOfReach({ room }: Scene, track: Track): readonly OutOfReach[] | null {
  const reachMm = room?.person?.reachMm;
  const edges = room && standingEdges(room);
  if (reachMm === undefined || !edges) return null;
  const steps = Math.max(1, Math.ceil(track.length / every));
  const stretches: { from: number; to: number; farthest: number }[] = [];
  let open = false;
  for (let step = 0; step <= steps; step++) {
    const chainage = (track.length * step) / steps;
    const { x, y } = trackPoint(track, chainage);
    const place = { xMm: x * 1000, yMm: y * 1000 };
    // Off the boards one can stand beside the track, or it is a bridge over an aisle.
    const away = room.baseboards?.some((board) => covers(board, place)) ? nearest(edges, place) : 0;
    if (away <= reachMm) {
      open = false;
      continue;
    }
    if (!open) stretches.push({ from: chainage, to: chainage, farthest: 0 });
    open = true;
    const last = stretches[stretches.length - 1];
    last.to = chainage;
    last.farthest = Math.max(last.farthest, away / 1000);
  }
  return stretches;
}

/** Distance to the nearest of some places, mm; Infinity without any. */
function nearest(places: readonly SceneCorner[], { xMm, yMm }: SceneCorner): number {
  let least = Number.POSITIVE_INFINITY;
  for (const place of places) {
    least = Math.min(least, (place.xMm - xMm) * (place.xMm - xMm) + (place.yMm - yMm) * (place.yMm - yMm));
  }
  return Math.sqrt(least);
}
