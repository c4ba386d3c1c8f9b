import { trackPoint } from '../../core/track/index.ts';
import type { TrackPoint } from '../../core/track/types.ts';
import type { DrawnTrack } from '../way/drawnTrack.ts';
import { stripUnderside, type WayMeasures } from '../way/measures.ts';

/** A baseboard: a level rectangle in the room, m. */
export interface TableTop {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly top: number;
  readonly thickness: number;
}

/** Baseboard as a scene file gives it, mm. */
interface Baseboard {
  readonly xMm: number;
  readonly yMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly topMm?: number | undefined;
}

/** Free board around the outermost strip edge, and the grid its sides are rounded out to, m. */
const margin = 0.18;
const rounding = 0.25;

/** Clear height under the lowest strip when the file says nothing of its board: room for a low support, m. */
const lowestSupport = 0.03;

const thickness = 0.045;

/** How far apart the track is looked at to find its extent, m. */
const look = 0.05;

/** How far a centreline may run beyond the boards' edges before they no longer count as carrying it, m. */
const overhang = 0.05;

/**
 * The boards to draw: the file's where they lie under the whole railway, or are to be drawn `asGiven` whatever they carry; else one board under
 * everything, as high as the file's lowest or below the lowest strip.
 */
export function tableTops(
  tracks: readonly DrawnTrack[],
  measures: WayMeasures,
  baseboards: readonly Baseboard[],
  asGiven = false,
): TableTop[] {
  const given = baseboards.map(
    (board): TableTop => ({
      x: [board.xMm / 1000, (board.xMm + board.lengthMm) / 1000],
      y: [board.yMm / 1000, (board.yMm + board.widthMm) / 1000],
      top: board.topMm === undefined ? -stripUnderside(measures) : board.topMm / 1000,
      thickness,
    }),
  );
  if (given.length > 0 && (asGiven || carryAll(given, tracks))) return given;
  const extent = trackExtent(tracks);
  for (const { x, y } of given) {
    extent.low = [Math.min(extent.low[0], x[0] + margin), Math.min(extent.low[1], y[0] + margin), extent.low[2]];
    extent.high = [Math.max(extent.high[0], x[1] - margin), Math.max(extent.high[1], y[1] - margin), extent.high[2]];
  }
  const reach = margin + measures.stripWidth / 2;
  const out = (value: number, way: -1 | 1): number => Math.ceil((way * value + reach) / rounding) * rounding * way;
  return [
    {
      x: [out(extent.low[0], -1), out(extent.high[0], 1)],
      y: [out(extent.low[1], -1), out(extent.high[1], 1)],
      top: Math.min(...given.map((board) => board.top), extent.low[2] - stripUnderside(measures) - lowestSupport),
      thickness,
    },
  ];
}

/** Whether every centreline lies over some board. */
function carryAll(boards: readonly TableTop[], tracks: readonly DrawnTrack[]): boolean {
  const point = {} as TrackPoint;
  return tracks.every(({ track }) => {
    const steps = Math.ceil(track.length / look);
    for (let i = 0; i <= steps; i++) {
      const { x, y } = trackPoint(track, (track.length * i) / steps, point);
      const carried = boards.some(
        (board) =>
          x > board.x[0] - overhang &&
          x < board.x[1] + overhang &&
          y > board.y[0] - overhang &&
          y < board.y[1] + overhang,
      );
      if (!carried) return false;
    }
    return true;
  });
}

/** Least and greatest x, y, z of all centrelines, m. */
export function trackExtent(tracks: readonly DrawnTrack[]): {
  low: [number, number, number];
  high: [number, number, number];
} {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  const point = {} as TrackPoint;
  for (const { track } of tracks) {
    const steps = Math.ceil(track.length / look);
    for (let i = 0; i <= steps; i++) {
      trackPoint(track, (track.length * i) / steps, point);
      const at = [point.x, point.y, point.z] as const;
      for (let axis = 0; axis < 3; axis++) {
        low[axis] = Math.min(low[axis], at[axis]);
        high[axis] = Math.max(high[axis], at[axis]);
      }
    }
  }
  return { low, high };
}
