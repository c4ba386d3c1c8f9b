import { square } from '../../math/index.ts';
import type { Track, TrackPoint } from '../../track/index.ts';
import { trackPoint } from '../../track/index.ts';
import type { Surroundings } from '../types.ts';

/**
 * Distance between the points that stand for a deck, in gauges: 10 mm in H0. Between them height is taken as straight, which
 * in H0 errs by 2.5 µm on a vertical curve of 5 m radius and by 0.05 mm at a break of 2 %, and the line by 0.03 mm sideways on a
 * curve of 400 mm.
 */
const spacingInGauges = 0.6;

/** Steeper than any deck: what lies higher than this could bring a strand down from where it was found needs no look. */
const steepest = 0.5;

/** The decks over a path, made ready so that one look-up costs the same however large the railway is. */
export interface DeckIndex {
  /**
   * Underside (m, room height) of the lowest deck that covers the plan point (x, y) and is higher than `above`; Infinity
   * without one. `chainage` is the path chainage the point belongs to, m, within `reach` of it in plan.
   */
  undersideOver(x: number, y: number, above: number, chainage: number): number;
}

/** Share of the way to a neighbour that no point has: the point looked up lies past the end of the deck. */
const beyondEnd = -1e-9;

/** More cells than a room is wide in either direction, so that a column and a row make one number. */
const cellsAcross = 0x1000000;

/** Every deck as one row of points after another. */
interface Points {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly underside: Float64Array;
  /** First point and last point of the track each point belongs to. */
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** Lengths the index is made for, m. */
export interface DeckSizes {
  /** Between rails: how fine the decks are taken. */
  readonly gauge: number;
  /** From a deck's centreline to its edge. */
  readonly halfWidth: number;
  /** Furthest that a point looked up may lie from the path's centreline. */
  readonly reach: number;
}

/** Finds the decks over a path; null when no deck passes over it anywhere. */
export function indexDecks(
  path: Track,
  around: Surroundings,
  { gauge, halfWidth, reach }: DeckSizes,
): DeckIndex | null {
  const spacing = spacingInGauges * gauge;
  const within = halfWidth + reach + spacing;
  const rise = steepest * within;
  const points = layOut(around, spacing);
  const nodes = Math.ceil(path.length / spacing) + 1;
  const { start, strands } = strandsOver(path, nodes, spacing, points, within);
  if (strands.length === 0) return null;
  const { x: px, y: py, underside, first, last } = points;
  const widthSquared = halfWidth * halfWidth;

  /** Squared plan distance from (x, y) to point k. */
  const away = (k: number, x: number, y: number): number => square(px[k] - x) + square(py[k] - y);

  return {
    undersideOver(x, y, above, chainage) {
      const node = Math.min(nodes - 1, Math.max(0, Math.round(chainage / spacing)));
      let lowest = Number.POSITIVE_INFINITY;
      for (let i = start[node]; i < start[node + 1]; i++) {
        let k = strands[i];
        // Strands come lowest first, so what lies well above a deck that covers the point need not be looked at.
        if (underside[k] > lowest + rise) break;
        let near = away(k, x, y);
        const step = k < last[k] && away(k + 1, x, y) < near ? 1 : -1;
        while (k + step >= first[k] && k + step <= last[k]) {
          const next = away(k + step, x, y);
          if (next >= near) break;
          near = next;
          k += step;
        }
        // The foot of the perpendicular lies on one of the two segments that meet at the nearest point.
        let other = k;
        let share = k === first[k] || k === last[k] ? beyondEnd : 0;
        for (let side = -1; side <= 1; side += 2) {
          const m = k + side;
          if (m < first[k] || m > last[k]) continue;
          const dx = px[m] - px[k];
          const dy = py[m] - py[k];
          const t = ((x - px[k]) * dx + (y - py[k]) * dy) / (dx * dx + dy * dy);
          if (t > share) {
            share = Math.min(t, 1);
            other = m;
          }
        }
        // A deck ends where its track does, cut square.
        if (share === beyondEnd) continue;
        const footX = px[k] + share * (px[other] - px[k]);
        const footY = py[k] + share * (py[other] - py[k]);
        if (square(footX - x) + square(footY - y) > widthSquared) continue;
        const height = underside[k] + share * (underside[other] - underside[k]);
        if (height > above && height < lowest) lowest = height;
      }
      return lowest;
    },
  };
}

function layOut({ tracks, deckDepth }: Surroundings, spacing: number): Points {
  const counts = tracks.map((track) => Math.max(1, Math.ceil(track.length / spacing)) + 1);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const points: Points = {
    x: new Float64Array(total),
    y: new Float64Array(total),
    underside: new Float64Array(total),
    first: new Int32Array(total),
    last: new Int32Array(total),
  };
  let at = 0;
  let here: TrackPoint | undefined;
  tracks.forEach((track, t) => {
    const from = at;
    for (let k = 0; k < counts[t]; k++, at++) {
      here = trackPoint(track, (track.length * k) / (counts[t] - 1), here);
      points.x[at] = here.x;
      points.y[at] = here.y;
      points.underside[at] = here.z - deckDepth;
      points.first[at] = from;
      points.last[at] = from + counts[t] - 1;
    }
  });
  return points;
}

/**
 * For every node of the path the strands of deck over it: the point of each nearest in plan. Points within `within` (m) are found
 * through a grid of cells of that size, so the cost grows with the length of track alone.
 */
function strandsOver(
  path: Track,
  nodes: number,
  spacing: number,
  points: Points,
  within: number,
): { start: Int32Array; strands: Int32Array } {
  const cells = new Map<number, number[]>();
  const column = (value: number): number => Math.floor(value / within);
  const cellOf = (i: number, j: number): number => i * cellsAcross + j;
  for (let k = 0; k < points.x.length; k++) {
    const key = cellOf(column(points.x[k]), column(points.y[k]));
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [k]);
    else cell.push(k);
  }
  /** Squared plan distance of point k from a place. */
  const away = (k: number, { x, y }: TrackPoint): number => square(points.x[k] - x) + square(points.y[k] - y);
  const start = new Int32Array(nodes + 1);
  const found: number[] = [];
  const close: number[] = [];
  const nearby: number[] = [];
  let here: TrackPoint | undefined;
  for (let node = 0; node < nodes; node++) {
    here = trackPoint(path, Math.min(path.length, node * spacing), here);
    close.length = 0;
    const i = column(here.x);
    const j = column(here.y);
    for (let u = i - 1; u <= i + 1; u++) {
      for (let v = j - 1; v <= j + 1; v++) {
        for (const k of cells.get(cellOf(u, v)) ?? []) {
          // The height first: it costs nothing, and most of what is near lies no higher.
          if (points.underside[k] > here.z && away(k, here) <= square(within)) close.push(k);
        }
      }
    }
    close.sort((a, b) => a - b);
    const firstFound = found.length;
    for (let from = 0; from < close.length; ) {
      let to = from;
      while (to + 1 < close.length && close[to + 1] === close[to] + 1 && close[to + 1] <= points.last[close[to]]) to++;
      let nearest = close[from];
      let least = Number.POSITIVE_INFINITY;
      for (let n = from; n <= to; n++) {
        const apart = away(close[n], here);
        if (apart < least) {
          least = apart;
          nearest = close[n];
        }
      }
      found.push(nearest);
      from = to + 1;
    }
    nearby.length = 0;
    for (let n = firstFound; n < found.length; n++) nearby.push(found[n]);
    nearby.sort((a, b) => points.underside[a] - points.underside[b]);
    for (let n = 0; n < nearby.length; n++) found[firstFound + n] = nearby[n];
    start[node + 1] = found.length;
  }
  return { start, strands: Int32Array.from(found) };
}
