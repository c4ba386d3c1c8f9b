import { trackPoint } from '../core/track/index.ts';
import type { Track } from '../core/track/types.ts';
import type { CompiledScene } from './types.ts';

/** Where another track, or another turn of the same one, lies over or under a place of a track. Heights in m, room. */
export interface Pass {
  /** Along the track looked at, m. */
  readonly chainage: number;
  /** Underside of the lowest deck above, or null. */
  readonly above: number | null;
  /** Rail of the highest track below, or null. */
  readonly below: number | null;
  /** Between the rail and the deck above, and between the rail below and the own deck, the lesser, m. */
  readonly clear: number;
}

/** Half a deck, in gauges, where the scene does not give its width. Source: NEM 122 (2007), formation of H0 70 mm wide. */
const halfWidthInGauges = 35 / 16.5;
/** Places looked at, in gauges apart: a third of half a deck, so that no crossing slips between two. */
const everyInGauges = 0.7;
/** Nearer in height than this they lie side by side and do not pass over each other, as a share of a deck's depth. */
const besideShare = 1;

/** Every place of a track that something passes over or under, in order of chainage. */
export function passesOf({ scene, tracks }: CompiledScene, trackId: string): Pass[] {
  const own = tracks.get(trackId);
  if (own === undefined) return [];
  const { thicknessMm, underlayMm, trackMm, widthMm } = scene.deck;
  const depth = (thicknessMm + underlayMm + trackMm) / 1000;
  const gauge = scene.scale.gaugeMm / 1000;
  const within = widthMm === undefined ? halfWidthInGauges * gauge : widthMm / 2000;
  const every = everyInGauges * gauge;
  const cells = cellsOf(
    [...tracks.values()].flatMap((track) => pointsOf(track, every)),
    within,
  );
  return pointsOf(own, every).flatMap(({ chainage, x, y, z }): Pass[] => {
    let above: number | null = null;
    let below: number | null = null;
    for (const other of near(cells, x, y, within)) {
      const apart = (other.x - x) * (other.x - x) + (other.y - y) * (other.y - y);
      if (apart > within * within || Math.abs(other.z - z) < besideShare * depth) continue;
      if (other.z > z) above = Math.min(above ?? Number.POSITIVE_INFINITY, other.z - depth);
      else below = Math.max(below ?? Number.NEGATIVE_INFINITY, other.z);
    }
    if (above === null && below === null) return [];
    const clear = Math.min(
      above === null ? Number.POSITIVE_INFINITY : above - z,
      below === null ? Number.POSITIVE_INFINITY : z - depth - below,
    );
    return [{ chainage, above, below, clear }];
  });
}

interface Point {
  readonly chainage: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function pointsOf(track: Track, every: number): Point[] {
  const count = Math.max(1, Math.ceil(track.length / every));
  return Array.from({ length: count + 1 }, (_, k) => {
    const chainage = (track.length * k) / count;
    const { x, y, z } = trackPoint(track, chainage);
    return { chainage, x, y, z };
  });
}

type Cells = ReadonlyMap<string, readonly Point[]>;

const cellOf = (metres: number, size: number): number => Math.floor(metres / size);

function cellsOf(points: readonly Point[], size: number): Cells {
  const cells = new Map<string, Point[]>();
  for (const point of points) {
    const key = `${cellOf(point.x, size)},${cellOf(point.y, size)}`;
    const cell = cells.get(key);
    if (cell) cell.push(point);
    else cells.set(key, [point]);
  }
  return cells;
}

function near(cells: Cells, x: number, y: number, size: number): Point[] {
  const [column, row] = [cellOf(x, size), cellOf(y, size)];
  return [-1, 0, 1].flatMap((dx) => [-1, 0, 1].flatMap((dy) => cells.get(`${column + dx},${row + dy}`) ?? []));
}
