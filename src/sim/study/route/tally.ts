import type { RoomConflict, RouteAnswer, RouteMiss } from './types.ts';

type Way = RouteAnswer['inTheWay'][number];

/** Counts what stood in the way, whichever candidate was ready first. */
export function createTally() {
  const ways = new Map<string, Way>();
  const reasons = new Map<string, string>();
  const add = (miss: Way['miss'], name: string | null): void => {
    const key = `${miss} ${name ?? ''}`;
    ways.set(key, { miss, name, times: (ways.get(key)?.times ?? 0) + 1 });
  };
  return {
    cannot(place: string, why: string): void {
      reasons.set(place, why);
      add('cannot-be-laid', null);
    },
    missed(misses: readonly RouteMiss[], conflicts: readonly RoomConflict[]): void {
      for (const miss of new Set(misses)) {
        const names = conflicts.flatMap(({ kind, name }) => (kind === miss ? [name] : []));
        for (const name of names.length === 0 ? [null] : names) add(miss, name);
      }
    },
    told: (places: Iterable<string>): Pick<RouteAnswer, 'inTheWay' | 'reason'> => ({
      inTheWay: [...ways.values()].sort(
        (a, b) => b.times - a.times || (`${a.miss} ${a.name}` < `${b.miss} ${b.name}` ? -1 : 1),
      ),
      reason: [...places].map((place) => reasons.get(place)).find((why) => why !== undefined) ?? null,
    }),
  };
}
