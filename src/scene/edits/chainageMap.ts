import { elementStartsMm } from '../places.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';

/** What became of one old element: the new elements from `from` to before `to`; none when it was taken out. */
export interface Fate {
  readonly from: number;
  readonly to: number;
}

/** Where a chainage of the old track is on the new one, mm. */
export interface ChainageMap {
  /** It keeps its share of the element it lies on; at a join it goes with the element before; beyond the end it stays as far beyond. */
  at(oldMm: number): number;
  /** It lay within an element that was taken out. */
  gone(oldMm: number): boolean;
}

/** Places nearer to a join than this are on it, mm. */
const onJoinMm = 1e-6;

/** How chainages move when a track's elements change. `fates` has one entry for each old element. */
export function chainageMap(before: SceneTrack, after: SceneTrack, fates: readonly Fate[]): ChainageMap {
  const old = elementStartsMm(before);
  const fresh = elementStartsMm(after);
  const last = before.alignment.length;
  const elementAt = (mm: number): number => {
    for (let index = 0; index < last; index++) if (mm <= old[index + 1] + onJoinMm) return index;
    return last;
  };
  return {
    at(mm) {
      // Over a turnout nothing changes.
      if (mm <= old[0]) return mm;
      const index = elementAt(mm);
      if (index === last) return fresh[fates[last - 1].to] + (mm - old[last]);
      const [from, to] = [fresh[fates[index].from], fresh[fates[index].to]];
      const whole = old[index + 1] - old[index];
      const share = whole > 0 ? Math.min(1, (mm - old[index]) / whole) : 1;
      // A place that nothing moved keeps its number to the last digit.
      if (from === old[index] && to === old[index + 1]) return mm;
      return from + share * (to - from);
    },
    gone(mm) {
      const index = elementAt(mm);
      if (index === last || mm <= old[0]) return false;
      const { from, to } = fates[index];
      return from === to && mm < old[index + 1] - onJoinMm && mm > old[index] + onJoinMm;
    },
  };
}

/** Fates where the elements from `index` on, `count` of them, became `fresh` new ones together, and all others stayed as they are. */
export function splicedFates(elements: number, index: number, count: number, fresh: number): Fate[] {
  return Array.from({ length: elements }, (_, k) => {
    if (k < index) return { from: k, to: k + 1 };
    if (k >= index + count) return { from: k - count + fresh, to: k - count + fresh + 1 };
    // Within the stretch each keeps its place in turn, the last takes what is left over.
    const first = Math.min(k - index, fresh);
    const end = k === index + count - 1 ? fresh : Math.min(first + 1, fresh);
    return { from: index + first, to: index + end };
  });
}
