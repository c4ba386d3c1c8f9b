import { cos, sin, square } from '../../math/index.ts';
import { type Track, type TrackPoint, trackPoint } from '../../track/index.ts';
import { footFrom, newFoot, type TrackRows } from '../moments/trackRows.ts';

/**
 * Centrelines nearer than this meet or cross, in gauges: one gauge. Where two tracks meet no two trains pass, so neighbours count from where
 * they have stopped drawing apart.
 */
const meetingInGauges = 1;

/** Tracks that draw apart by less than this are parallel: 1 in 100, gentler than any turnout. */
const parallel = 0.01;

/** Places of the path are this many points of the rows apart; a meeting or a parting is longer by far. */
const pointsPerPlace = 4;

/** Points by which the foot may move from one place of the path to the next and still be on the same piece of track. */
const sameStrand = 3 * pointsPerPlace;

/** Two tracks whose ends are this near are one line, m: a gap in the rails, and a slip in the plan. */
const joint = 0.002;

/** The pieces of track beside each place of a path: rows `start[node]` to `start[node + 1]`. */
export interface Neighbours {
  readonly nodes: number;
  readonly spacing: number;
  readonly start: Int32Array;
  /** Point of the rows nearest to the place. */
  readonly point: Int32Array;
  /** Which side of the neighbour the path lies on: 1 left, -1 right. */
  readonly side: Int8Array;
  /** Which side of the path the neighbour lies on, the same way. */
  readonly facing: Int8Array;
}

export interface NeighbourSizes {
  readonly gauge: number;
  /** Between points of the rows, m. */
  readonly spacing: number;
  /** Furthest that a neighbour counts as beside, m in plan, and furthest above or below, m. */
  readonly within: number;
  readonly height: number;
}

/** A piece of track beside a place while it is looked for. */
interface Strand {
  /** Nearest point of the rows. */
  readonly point: number;
  /** How far the path lies to its left, m, and which side of the path it is on. */
  readonly left: number;
  readonly facing: number;
  /** It meets the path here, or draws apart from where it does. */
  meets: boolean;
}

/** Finds what lies beside a path at nearly its height and does not meet it; null when nothing does. */
export function neighboursOf(path: Track, rows: TrackRows, sizes: NeighbourSizes): Neighbours | null {
  const { gauge } = sizes;
  const spacing = pointsPerPlace * sizes.spacing;
  const strands = strandsBeside(path, rows, { ...sizes, spacing });
  for (const beside of strands) {
    for (const strand of beside) strand.meets = Math.abs(strand.left) < meetingInGauges * gauge;
  }
  for (let n = 1; n < strands.length; n++) spreadMeeting(strands[n - 1], strands[n], rows, spacing);
  for (let n = strands.length - 2; n >= 0; n--) spreadMeeting(strands[n + 1], strands[n], rows, spacing);
  const start = new Int32Array(strands.length + 1);
  const point: number[] = [];
  const side: number[] = [];
  const facing: number[] = [];
  strands.forEach((beside, n) => {
    for (const strand of beside) {
      if (strand.meets) continue;
      point.push(strand.point);
      side.push(strand.left < 0 ? -1 : 1);
      facing.push(strand.facing);
    }
    start[n + 1] = point.length;
  });
  if (point.length === 0) return null;
  return {
    nodes: strands.length,
    spacing,
    start,
    point: Int32Array.from(point),
    side: Int8Array.from(side),
    facing: Int8Array.from(facing),
  };
}

/** What has met a place before, and goes on drawing apart, on the same track or the one that continues it, is still part of the meeting. */
function spreadMeeting(from: readonly Strand[], to: readonly Strand[], rows: TrackRows, spacing: number): void {
  for (const strand of to) {
    if (strand.meets) continue;
    for (const before of from) {
      if (!before.meets || !goesOn(before.point, strand.point, rows)) continue;
      if (Math.abs(strand.left) - Math.abs(before.left) > parallel * spacing) strand.meets = true;
    }
  }
}

/**
 * Whether two points of the rows are on one piece of line: near each other on one track, where one track ends and the next begins, or where one begins on the
 * other, as a branch does at its turnout.
 */
function goesOn(from: number, to: number, rows: TrackRows): boolean {
  if (rows.first[from] === rows.first[to]) return Math.abs(from - to) <= sameStrand;
  return (
    endsNear(from, rows).some((end) => liesOn(end, to, rows)) ||
    endsNear(to, rows).some((end) => liesOn(end, from, rows))
  );
}

/** Whether an end of one track lies on another one near to a point of that. */
function liesOn(end: number, point: number, rows: TrackRows): boolean {
  const [x, y] = [rows.x[end], rows.y[end]];
  const away = (k: number): number => square(rows.x[k] - x) + square(rows.y[k] - y);
  let nearest = point;
  const last = Math.min(rows.last[point], point + sameStrand);
  for (let k = Math.max(rows.first[point], point - sameStrand); k <= last; k++)
    if (away(k) < away(nearest)) nearest = k;
  const foot = newFoot();
  footFrom(rows, nearest, x, y, foot);
  return square(foot.x - x) + square(foot.y - y) + square(foot.z - rows.z[end]) <= square(joint);
}

/** The ends of its track that a point is near to. */
const endsNear = (point: number, { first, last }: TrackRows): number[] =>
  [first[point], last[point]].filter((end) => Math.abs(end - point) <= sameStrand);

/** More cells than a room is wide in either direction, so that a column and a row make one number. */
const cellsAcross = 0x1000000;

/** For every place of the path one strand for each run of neighbouring points within reach, found through a grid of cells. */
function strandsBeside(path: Track, rows: TrackRows, { spacing, within, height }: NeighbourSizes): Strand[][] {
  const column = (value: number): number => Math.floor(value / within);
  const cells = new Map<number, number[]>();
  for (let k = 0; k < rows.x.length; k++) {
    const key = column(rows.x[k]) * cellsAcross + column(rows.y[k]);
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [k]);
    else cell.push(k);
  }
  const foot = newFoot();
  const close: number[] = [];
  const nodes = Math.ceil(path.length / spacing) + 1;
  const strands: Strand[][] = [];
  let here: TrackPoint | undefined;
  for (let node = 0; node < nodes; node++) {
    here = trackPoint(path, Math.min(path.length, node * spacing), here);
    const { x, y, z } = here;
    const cosine = cos(here.heading);
    const sine = sin(here.heading);
    const away = (k: number): number => square(rows.x[k] - x) + square(rows.y[k] - y);
    close.length = 0;
    for (let u = column(x) - 1; u <= column(x) + 1; u++) {
      for (let v = column(y) - 1; v <= column(y) + 1; v++) {
        for (const k of cells.get(u * cellsAcross + v) ?? []) {
          if (Math.abs(rows.z[k] - z) < height && away(k) <= square(within)) close.push(k);
        }
      }
    }
    close.sort((a, b) => a - b);
    const found: Strand[] = [];
    for (let from = 0; from < close.length; ) {
      let to = from;
      while (to + 1 < close.length && close[to + 1] === close[to] + 1 && close[to + 1] <= rows.last[close[to]]) to++;
      let nearest = close[from];
      let least = away(nearest);
      for (let n = from + 1; n <= to; n++) {
        const next = away(close[n]);
        if (next >= least) continue;
        least = next;
        nearest = close[n];
      }
      footFrom(rows, nearest, x, y, foot);
      const facing = (foot.y - y) * cosine - (foot.x - x) * sine < 0 ? -1 : 1;
      found.push({ point: nearest, left: foot.left, facing, meets: false });
      from = to + 1;
    }
    strands.push(found);
  }
  return strands;
}
