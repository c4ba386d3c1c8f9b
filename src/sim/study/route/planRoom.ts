import { trackPoint } from '../../../core/track/index.ts';
import type { Track, TrackPoint } from '../../../core/track/types.ts';
import { lookedEvery } from './roomConflicts.ts';

/** What the plan of some tracks takes, m. */
export interface PlanRoom {
  readonly across: number;
  readonly along: number;
  /** Tightest radius; Infinity where all is straight. */
  readonly radius: number;
}

/** What the decks of tracks take in plan, each `half` m wide to either side of its line. */
export function planRoom(tracks: Iterable<Track>, half: number): PlanRoom {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  let curvature = 0;
  let point: TrackPoint | undefined;
  for (const track of tracks) {
    for (const { startCurvature, endCurvature } of track.spec.elements) {
      curvature = Math.max(curvature, Math.abs(startCurvature), Math.abs(endCurvature));
    }
    const steps = Math.max(1, Math.ceil(track.length / lookedEvery));
    for (let k = 0; k <= steps; k++) {
      point = trackPoint(track, (k / steps) * track.length, point);
      const { x, y } = point;
      [west, east] = [Math.min(west, x), Math.max(east, x)];
      [south, north] = [Math.min(south, y), Math.max(north, y)];
    }
  }
  return { across: east - west + 2 * half, along: north - south + 2 * half, radius: 1 / curvature };
}
