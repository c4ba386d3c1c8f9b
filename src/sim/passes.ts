import { newTrackPoint, trackPoint } from '../core/track/index.ts';
import type { Track } from '../core/track/types.ts';
import { deckWidth } from './deckWidth.ts';
import type { CompiledScene } from './types.ts';

/** Where another track, or another turn of the same one, lies over or under a place of a track. Heights in m, room. */
export interface Pass {
  /** Along the track looked at, m. */
  readonly chainage: number;
  /** Its rail. */
  readonly rail: number;
  /** Underside of the lowest deck above, or null; and the id of the track on it. */
  readonly above: number | null;
  readonly over: string | null;
  /** Rail of the highest track below, or null. */
  readonly below: number | null;
  /** Between the rail and the deck above, and between the rail below and the own deck, the lesser, m. */
  readonly clear: number;
}

/** Places looked at, in gauges apart: a third of half a deck, so that no crossing slips between two. */
const everyInGauges = 0.7;
/** Nearer in height than this they lie side by side and do not pass over each other, as a share of a deck's depth. */
const besideShare = 1;

/** Every place of a track that something passes over or under, in order of chainage. */
export function passesOf(compiled: CompiledScene, trackId: string): Pass[] {
  const own = compiled.tracks.get(trackId);
  if (own === undefined) return [];
  const { thicknessMm, underlayMm, trackMm } = compiled.scene.deck;
  const depth = (thicknessMm + underlayMm + trackMm) / 1000;
  const { cells, within, every } = groundOf(compiled);
  const passes: Pass[] = [];
  for (const { chainage, x, y, z } of pointsOf(trackId, own, every)) {
    let above: number | null = null;
    let over: string | null = null;
    let below: number | null = null;
    const [column, row] = [Math.floor(x / within), Math.floor(y / within)];
    for (let near = 0; near < 9; near++) {
      for (const other of cells.get(cellKey(column - 1 + (near % 3), row - 1 + Math.floor(near / 3))) ?? []) {
        const [dx, dy, dz] = [other.x - x, other.y - y, other.z - z];
        if (Math.abs(dz) < besideShare * depth || dx * dx + dy * dy > within * within) continue;
        if (dz < 0) below = Math.max(below ?? Number.NEGATIVE_INFINITY, other.z);
        else if (above === null || other.z - depth < above) {
          above = other.z - depth;
          over = other.trackId;
        }
      }
    }
    if (above === null && below === null) continue;
    const clear = Math.min(
      above === null ? Number.POSITIVE_INFINITY : above - z,
      below === null ? Number.POSITIVE_INFINITY : z - depth - below,
    );
    passes.push({ chainage, rail: z, above, over, below, clear });
  }
  return passes;
}

interface Point {
  readonly trackId: string;
  readonly chainage: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function pointsOf(trackId: string, track: Track, every: number): Point[] {
  const count = Math.max(1, Math.ceil(track.length / every));
  const point = newTrackPoint();
  return Array.from({ length: count + 1 }, (_, k) => {
    const chainage = (track.length * k) / count;
    const { x, y, z } = trackPoint(track, chainage, point);
    return { trackId, chainage, x, y, z };
  });
}

/** All tracks of a scene as points in square cells of the reach of a deck. Lengths m. */
interface Ground {
  readonly within: number;
  readonly every: number;
  readonly cells: ReadonlyMap<number, readonly Point[]>;
}

/** A scene is asked once for each of its tracks. */
const known = new WeakMap<CompiledScene, Ground>();

function groundOf(compiled: CompiledScene): Ground {
  const before = known.get(compiled);
  if (before !== undefined) return before;
  const { scene, tracks } = compiled;
  const gauge = scene.scale.gaugeMm / 1000;
  const within = deckWidth(scene) / 2;
  const every = everyInGauges * gauge;
  const cells = new Map<number, Point[]>();
  for (const [id, track] of tracks) {
    for (const point of pointsOf(id, track, every)) {
      const key = cellKey(Math.floor(point.x / within), Math.floor(point.y / within));
      const cell = cells.get(key);
      if (cell) cell.push(point);
      else cells.set(key, [point]);
    }
  }
  const ground = { within, every, cells };
  known.set(compiled, ground);
  return ground;
}

/** One number for a cell: 400 m of millimetre cells either way stay apart. */
const cellKey = (column: number, row: number): number => column * 2_097_152 + row;
