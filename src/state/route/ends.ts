import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { extendToPose, type NewBend, nearestOn, type Scene, setProfilePoint } from '../../scene/index.ts';

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

/** A place on the line of another track, run the way that turns an arriving track least, and how high it is there, m. */
export interface LinePlace extends OpenEnd {
  readonly z: number;
}

/** The place on the line of another track nearest to one within `reach`, m; null when there is none. Of lines over each other that nearest in height. */
export function lineNear(
  tracks: ReadonlyMap<string, Track>,
  to: readonly [number, number],
  reach: number,
  own: OpenEnd,
): LinePlace | null {
  let best: LinePlace | null = null;
  let least = reach;
  for (const [trackId, track] of tracks) {
    if (trackId === own.trackId) continue;
    const { chainage, off } = nearestOn(track, to);
    if (off >= least) continue;
    least = off;
    const { x, y, z, heading } = trackPoint(track, chainage);
    const against = Math.cos(heading - own.heading) < 0;
    best = { trackId, x, y, z, heading: against ? heading + Math.PI : heading };
  }
  return best;
}

/** A track that runs into another may turn this far altogether on its way, rad: what turns further goes round instead. */
const mostJoinTurn = (100 * Math.PI) / 180;

/** The scene with a track laid on into the line of another, tangent to it and, at its last height, as high. Throws RangeError in words. */
export function joinedTo(scene: Scene, trackId: string, line: LinePlace, bend: NewBend): Scene {
  const goal = { xMm: line.x * 1000, yMm: line.y * 1000, headingDeg: (line.heading * 180) / Math.PI };
  const joined = extendToPose(scene, trackId, goal, bend, mostJoinTurn);
  const profile = joined.tracks.find(({ id }) => id === trackId)?.profile ?? [];
  const last = profile.length - 1;
  // Heights that are counted from the end of the track meet there; others are left as they were drawn.
  return profile[last]?.at?.endOf === 'track'
    ? setProfilePoint(joined, trackId, last, { heightMm: line.z * 1000 })
    : joined;
}
