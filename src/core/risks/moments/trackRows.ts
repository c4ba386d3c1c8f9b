import { clamp, square } from '../../math/index.ts';
import { type Track, type TrackPoint, trackPoint } from '../../track/index.ts';

/** Tracks as rows of points at even distances, one track after another, lengths m. */
export interface TrackRows {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** First and last point of the track each point belongs to. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** First point of each track, and how far apart in chainage its points are. */
  readonly start: Int32Array;
  readonly step: Float64Array;
}

/** Lays tracks out in points at most `spacing` (m) apart, both ends of each among them. */
export function layInRows(tracks: readonly Track[], spacing: number): TrackRows {
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
  /** The segment it lies on, by its first point, and the share of the way along it. */
  point: number;
  share: number;
  /** How far the point asked about lies to the left of the row, m; negative: to the right. */
  left: number;
  /** Where the foot is, m. */
  x: number;
  y: number;
  z: number;
  /** The point asked about lies past an end of the row. */
  beyond: boolean;
}

export const newFoot = (): Foot => ({ point: 0, share: 0, left: 0, x: 0, y: 0, z: 0, beyond: false });

/** Finds the foot of (x, y) on a row, m: downhill from point `from` of it to the nearest place. */
export function footFrom(rows: TrackRows, from: number, x: number, y: number, out: Foot): void {
  const { x: px, y: py, z: pz, first, last } = rows;
  const begin = first[from];
  const end = last[from];
  let k = from;
  let near = square(px[k] - x) + square(py[k] - y);
  const step = k < end && square(px[k + 1] - x) + square(py[k + 1] - y) < near ? 1 : -1;
  while (k + step >= begin && k + step <= end) {
    const next = square(px[k + step] - x) + square(py[k + step] - y);
    if (next >= near) break;
    near = next;
    k += step;
  }
  // The foot lies on one of the two segments that meet at the nearest point.
  let segment = k === end ? k - 1 : k;
  let share = alongSegment(rows, segment, x, y);
  if (share < 0 && segment > begin) {
    segment -= 1;
    share = alongSegment(rows, segment, x, y);
    // On the outside of a bend the point itself is nearest, and either segment's end is it.
    if (share > 1) share = 1;
  }
  out.beyond = (segment === begin && share < 0) || (segment === end - 1 && share > 1);
  share = clamp(share, 0, 1);
  const dx = px[segment + 1] - px[segment];
  const dy = py[segment + 1] - py[segment];
  const fx = px[segment] + share * dx;
  const fy = py[segment] + share * dy;
  const side = dx * (y - fy) - dy * (x - fx);
  const distance = Math.sqrt(square(fx - x) + square(fy - y));
  out.point = segment;
  out.share = share;
  out.left = side < 0 ? -distance : distance;
  out.x = fx;
  out.y = fy;
  out.z = pz[segment] + share * (pz[segment + 1] - pz[segment]);
}

/** How far along a segment the foot of (x, y) lies, as a share of it. */
function alongSegment({ x: px, y: py }: TrackRows, segment: number, x: number, y: number): number {
  const dx = px[segment + 1] - px[segment];
  const dy = py[segment + 1] - py[segment];
  return ((x - px[segment]) * dx + (y - py[segment]) * dy) / (dx * dx + dy * dy);
}
