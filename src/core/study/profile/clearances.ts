import { hypot } from '../../math/index.ts';
import { trackPoint } from '../../track/index.ts';
import type { Track } from '../../track/types.ts';
import type { Clearance } from './types.ts';

/** What must stay clear of what; m. */
export interface Decks {
  /** Rail top to rail top where one track passes over another. */
  readonly least: number;
  /** Tracks whose centrelines come nearer than this in plan lie over each other. */
  readonly within: number;
  /** Tracks whose heights stay. */
  readonly others: readonly Track[];
}

/** Places looked at, in shares of `within`: no pass can slip between two. */
const step = 0.5;

/** Along the line this many times `within` further on it counts as another turn, not as the same place. */
const anotherTurn = 6;

interface Place {
  readonly chainage: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Everywhere that a line passes over itself or over or under another, as it lies now: what is above stays above. */
export function clearancesOf(track: Track, { least, within, others }: Decks): Clearance[] {
  const own = placesOf(track, step * within);
  const found: Clearance[] = [];
  for (const here of own) {
    for (const there of passes(own, here, within)) {
      if (there.z <= here.z || Math.abs(there.chainage - here.chainage) < anotherTurn * within) continue;
      found.push({ above: there.chainage, below: here.chainage, fixed: 0, least });
    }
  }
  for (const other of others) {
    const beside = placesOf(other, step * within);
    for (const here of own) {
      for (const there of passes(beside, here, within)) {
        const over = there.z > here.z;
        found.push({
          above: over ? null : here.chainage,
          below: over ? here.chainage : null,
          fixed: there.z,
          least,
        });
      }
    }
  }
  return found;
}

function placesOf(track: Track, every: number): Place[] {
  const count = Math.max(1, Math.ceil(track.length / every));
  return Array.from({ length: count + 1 }, (_, k) => {
    const chainage = (k / count) * track.length;
    const { x, y, z } = trackPoint(track, chainage);
    return { chainage, x, y, z };
  });
}

/** Of every pass within reach of a place the nearest. */
function passes(line: readonly Place[], { x, y }: Place, within: number): Place[] {
  const away = line.map((one) => hypot(one.x - x, one.y - y));
  return line.filter(
    (_, k) => away[k] < within && !(k > 0 && away[k - 1] < away[k]) && !(k + 1 < away.length && away[k + 1] <= away[k]),
  );
}
