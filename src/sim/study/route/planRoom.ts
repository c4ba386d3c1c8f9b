import { hypot } from '../../../core/math/index.ts';
import { trackPoint } from '../../../core/track/index.ts';
import type { Track, TrackPoint } from '../../../core/track/types.ts';
import { isInside } from '../../../scene/index.ts';
import type { RoomCorner } from './types.ts';

/** What the plan of some tracks takes, m. */
export interface PlanRoom {
  readonly across: number;
  readonly along: number;
  /** Tightest radius; Infinity where all is straight. */
  readonly radius: number;
  /** How far a deck reaches out of the room at most; 0 when all lie inside, or no room is given. */
  readonly outside: number;
}

/** Way between the places looked at, m: the bow of an arc of 100 mm between two stands out by 0.1 mm. */
const every = 0.01;

/** What the decks of tracks take in plan, each `half` m wide to either side of its line, and how far they reach out of a room. */
export function planRoom(tracks: readonly Track[], half: number, corners: readonly RoomCorner[] | null): PlanRoom {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  let [curvature, outside] = [0, 0];
  let point: TrackPoint | undefined;
  for (const track of tracks) {
    for (const { startCurvature, endCurvature } of track.spec.elements) {
      curvature = Math.max(curvature, Math.abs(startCurvature), Math.abs(endCurvature));
    }
    const steps = Math.max(1, Math.ceil(track.length / every));
    for (let k = 0; k <= steps; k++) {
      point = trackPoint(track, (k / steps) * track.length, point);
      const { x, y } = point;
      [west, east] = [Math.min(west, x), Math.max(east, x)];
      [south, north] = [Math.min(south, y), Math.max(north, y)];
      if (corners !== null) outside = Math.max(outside, outsideBy(x, y, half, corners));
    }
  }
  return { across: east - west + 2 * half, along: north - south + 2 * half, radius: 1 / curvature, outside };
}

/** How far a disc of radius `half`, m, about a place reaches out of the room; negative when it clears the walls. */
function outsideBy(x: number, y: number, half: number, corners: readonly RoomCorner[]): number {
  let nearest = Number.POSITIVE_INFINITY;
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length];
    const [ax, ay] = [a.xMm / 1e3, a.yMm / 1e3];
    const [dx, dy] = [b.xMm / 1e3 - ax, b.yMm / 1e3 - ay];
    const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
    const share = Math.min(Math.max(along, 0), 1);
    nearest = Math.min(nearest, hypot(x - ax - share * dx, y - ay - share * dy));
  });
  const inside = isInside({ xMm: x * 1e3, yMm: y * 1e3 }, corners);
  return half + (inside ? -nearest : nearest);
}
