import { cos, sin } from '../math/index.ts';
import { type Track, type TrackPoint, trackPoint } from '../track/index.ts';

/** Tracks as rows of points at even distances, one track after another, with what may be swept beside each point. Lengths m. */
export interface TrackRows {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** First point and last point of the track each point belongs to. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** First point of each track, and how far apart its points are. */
  readonly start: Int32Array;
  readonly step: Float64Array;
}

/** Lays tracks out in points about `spacing` (m) apart, both ends of each among them. */
export function trackRows(tracks: readonly Track[], spacing: number): TrackRows {
  const counts = tracks.map((track) => Math.max(1, Math.ceil(track.length / spacing)) + 1);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const rows: TrackRows = {
    x: new Float64Array(total),
    y: new Float64Array(total),
    z: new Float64Array(total),
    first: new Int32Array(total),
    last: new Int32Array(total),
    start: new Int32Array(tracks.length),
    step: Float64Array.from(tracks, (track, t) => track.length / (counts[t] - 1)),
  };
  let at = 0;
  let here: TrackPoint | undefined;
  tracks.forEach((track, t) => {
    const from = at;
    rows.start[t] = from;
    for (let k = 0; k < counts[t]; k++, at++) {
      here = trackPoint(track, k * rows.step[t], here);
      rows.x[at] = here.x;
      rows.y[at] = here.y;
      rows.z[at] = here.z;
      rows.first[at] = from;
      rows.last[at] = from + counts[t] - 1;
    }
  });
  return rows;
}

/** The place of a row nearest in plan to a point. Mutable for reuse. */
export interface Foot {
  /** The point of the row nearest to the foot, the one at the other end of its segment, and the share of the way there. */
  point: number;
  other: number;
  share: number;
  /** How far the point lies to the left of the track there, m. */
  left: number;
  /** Height of the rail there, m. */
  z: number;
  /** The point lies past an end of the track. */
  beyond: boolean;
}

export const newFoot = (): Foot => ({ point: 0, other: 0, share: 0, left: 0, z: 0, beyond: false });

/** Finds the foot of (x, y) on a row, going downhill from point `from` of it. */
export function footFrom(rows: TrackRows, from: number, x: number, y: number, out: Foot): void {
  const { x: px, y: py, z: pz, first, last } = rows;
  let k = from;
  let near = (px[k] - x) ** 2 + (py[k] - y) ** 2;
  for (let step = 1; step >= -1; step -= 2) {
    for (let moved = false; ; moved = true) {
      const next = k + step;
      if (next < first[k] || next > last[k]) break;
      const away = (px[next] - x) ** 2 + (py[next] - y) ** 2;
      if (away >= near) {
        if (moved) step = -1;
        break;
      }
      near = away;
      k = next;
    }
  }
}

export const tangentOf = (here: TrackPoint): readonly [number, number] => [cos(here.heading), sin(here.heading)];
