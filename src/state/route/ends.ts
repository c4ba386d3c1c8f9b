import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';

/** The end of a track that another one could go on from: its place (m) and the direction a track that arrives there runs in, rad. */
export interface OpenEnd {
  readonly trackId: string;
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** Both ends of every track, as seen by a track that arrives: it runs into a start the way that track runs, into an end against it. */
export function openEnds(tracks: ReadonlyMap<string, Track>): OpenEnd[] {
  return [...tracks].flatMap(([trackId, track]) => {
    const [from, to] = [trackPoint(track, 0), trackPoint(track, track.length)];
    return [
      { trackId, x: from.x, y: from.y, heading: from.heading },
      { trackId, x: to.x, y: to.y, heading: to.heading + Math.PI },
    ];
  });
}

/** The open end nearest to a place within `reach`, m, but not the end of the track that is being drawn; null when there is none. */
export function endNear(
  ends: readonly OpenEnd[],
  [x, y]: readonly [number, number],
  reach: number,
  own: OpenEnd,
): OpenEnd | null {
  let best: OpenEnd | null = null;
  let least = reach;
  for (const end of ends) {
    const away = Math.hypot(end.x - x, end.y - y);
    if (away >= least || Math.hypot(end.x - own.x, end.y - own.y) < 1e-6) continue;
    least = away;
    best = end;
  }
  return best;
}
