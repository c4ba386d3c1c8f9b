import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import type { ReadingKind, Tool } from './types.ts';

/** A place where a reading is taken. Supports from 0, m. */
export interface Stop {
  readonly chainage: number;
  /** The support it is at, or null between two. */
  readonly support: number | null;
  /** Supports beside it: that at which it is, those between which it is, or both ends of a spacer. */
  readonly beside: readonly number[];
}

/** A support of a track: its number as the builder counts, from 0, and its chainage, m. */
interface NumberedSupport {
  readonly number: number;
  readonly chainage: number;
}

/** The supports that bend a track's strip, in order: those of a branch's turnout are the main track's. */
export const supportsOf = (track: Track): readonly NumberedSupport[] =>
  (track.spec.profile.strip?.supports ?? []).flatMap(({ chainage, number }, index) =>
    number === -1 ? [] : [{ number: number ?? index, chainage }],
  );

/** The places for a kind of reading in the order in which one walks along the track. */
export function stopsOf(track: Track, kind: ReadingKind, { places, baseMm, further }: Tool): Stop[] {
  const supports = supportsOf(track);
  const half = baseMm / 2000;
  const at = ({ chainage, number }: NumberedSupport): Stop => ({ chainage, support: number, beside: [number] });
  const fits = ({ chainage }: Stop): boolean => chainage - half >= 0 && chainage + half <= track.length;
  if (kind === 'height' || kind === 'cross') return supports.map(at);
  if (kind === 'gap') return supports.map(at).filter(fits);
  if (kind === 'rise') {
    return supports
      .slice(0, Math.max(0, supports.length - further))
      .map((low, i): Stop => ({ ...at(low), beside: [low.number, supports[i + further].number] }));
  }
  if (places === 'supports') return supports.map(at).filter(fits);
  return supports
    .slice(1)
    .map((next, i): Stop => {
      const before = supports[i];
      return {
        chainage: (before.chainage + next.chainage) / 2,
        support: null,
        beside: [before.number, next.number],
      };
    })
    .filter(fits);
}

/** A deck above is at least this much higher, m: less is the same deck further on. */
const leastStorey = 0.025;

/**
 * How many supports further on the deck above is reached, as most supports have it; 1 for a line that never passes over itself,
 * where a spacer can only be a step from support to support.
 */
export function supportsToDeckAbove(track: Track): number {
  const supports = supportsOf(track);
  const points = supports.map(({ chainage }) => trackPoint(track, chainage));
  const spacing = points.length > 1 ? (supports[1].chainage - supports[0].chainage) * 0.75 : 0;
  const counts = new Map<number, number>();
  points.forEach((low, i) => {
    let nearest = spacing;
    let found = 0;
    for (let j = i + 1; j < points.length; j++) {
      const away = Math.hypot(points[j].x - low.x, points[j].y - low.y);
      if (Math.abs(points[j].z - low.z) < leastStorey) continue;
      if (away < nearest) {
        nearest = away;
        found = j - i;
      } else if (found > 0 && j - i > found + 2) break;
    }
    if (found > 0) counts.set(found, (counts.get(found) ?? 0) + 1);
  });
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 1;
}
