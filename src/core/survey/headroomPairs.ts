import { hypot } from '../math/index.ts';
import { type Track, trackPoint } from '../track/index.ts';
import { type LineInput, lineShape, stretchesOf } from './lineShape.ts';
import type { HeadroomPair } from './types.ts';

/** What lies over and under the line. Lengths in m. */
export interface Decks {
  /** From a rail top down to the underside of its deck. */
  readonly depth: number;
  /** From the centreline to the edge of a deck. */
  readonly halfWidth: number;
  /** Other tracks, whose heights stay. */
  readonly others: readonly Track[];
}

/** Distance between the points that a passing track is searched by, in half widths: no pass can be missed between two. */
const searchStep = 0.5;

/** A pass counts as another turn, and not as the same place, this many half widths further along. */
const anotherTurn = 6;

/**
 * Where the line passes over itself or over or under another track: at every support and midway between supports, the nearest
 * place in plan of each pass within a deck's half width.
 */
export function headroomPairs(input: LineInput, decks: Decks): HeadroomPair[] {
  const shape = lineShape(input);
  const { supports } = input;
  const [first, last] = [shape.from, supports[supports.length - 1]];
  const places = [...supports.filter((s) => s >= first), ...stretchesOf(shape).map(({ from, to }) => (from + to) / 2)];
  const own = samples(shape.plan, decks.halfWidth, first, last);
  const others = decks.others.map((track) => samples(track, decks.halfWidth, 0, track.length));
  const pairs: HeadroomPair[] = [];
  for (const chainage of places) {
    const here = trackPoint(shape.plan, chainage);
    for (const above of passes(own, here, decks.halfWidth)) {
      if (Math.abs(above.chainage - chainage) < anotherTurn * decks.halfWidth || above.z <= here.z) continue;
      pairs.push({ below: chainage, above: above.chainage, fixed: 0, depth: decks.depth });
    }
    for (const track of others) {
      for (const pass of passes(track, here, decks.halfWidth)) {
        const over = pass.z > here.z;
        const [below, above] = over ? [chainage, null] : [null, chainage];
        pairs.push({ below, above, fixed: pass.z, depth: decks.depth });
      }
    }
  }
  return pairs;
}

interface Sample {
  readonly chainage: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function samples(track: Track, halfWidth: number, from: number, to: number): Sample[] {
  const count = Math.max(1, Math.ceil((to - from) / (searchStep * halfWidth)));
  return Array.from({ length: count + 1 }, (_, i) => {
    const chainage = from + ((to - from) * i) / count;
    const { x, y, z } = trackPoint(track, chainage);
    return { chainage, x, y, z };
  });
}

/** The nearest sample of every pass within a half width of a place: where the distance is least among its neighbours. */
function passes(track: readonly Sample[], { x, y }: { x: number; y: number }, halfWidth: number): Sample[] {
  const away = track.map((one) => hypot(one.x - x, one.y - y));
  return track.filter((_, i) => {
    if (away[i] > halfWidth) return false;
    return !(i > 0 && away[i - 1] < away[i]) && !(i + 1 < away.length && away[i + 1] <= away[i]);
  });
}
