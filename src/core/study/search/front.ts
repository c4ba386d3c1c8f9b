import { unbeaten, type Wish } from '../front.ts';
import { turnedDirections } from './directions.ts';
import type { LatticePlace, Weigh, Weighed } from './types.ts';

export interface FrontSpec {
  readonly settings: readonly number[];
  readonly wishes: readonly Wish[];
  /** No new round is begun once so many different places have been asked for, those to start from not counted. */
  readonly probes: number;
}

export interface SearchedFront {
  /** Places that keep every limit and that no place asked about beats; of places alike in every value the first. */
  readonly front: readonly Weighed[];
  /** Around each of them, one step of one number either way, all has been looked at: nothing there beats it. */
  readonly settled: boolean;
}

/** Looks at one place that are told apart when the next is chosen. */
const mostLooks = 1e6;

/** The first look goes this share of the range to either side. */
const firstReach = 1 / 4;

/**
 * From places known, better ones by looking around each of those unbeaten at a reach that halves when nothing is found: direct multisearch (A. L. Custódio, J. F. A.
 * Madeira, A. I. F. Vaz & L. N. Vicente, "Direct multisearch for multiobjective optimization", SIAM J. Optim. 21 (2011) 1109); with one wish it is a pattern search. Looked at are both
 * ways along every number and along directions turned anew each round. Places that miss limits are left out.
 */
export async function searchFront(
  spec: FrontSpec,
  start: readonly Weighed[],
  weigh: Weigh,
  stopped: () => boolean,
): Promise<SearchedFront> {
  const { settings, wishes, probes } = spec;
  const halvings = Math.max(...settings.map((count) => halvingsFor((count - 1) * firstReach)));
  const reachAt = (halved: number): number[] =>
    settings.map((count) => {
      let reach = (count - 1) * firstReach;
      for (let k = 0; k < halved; k++) reach /= 2;
      return Math.max(1, Math.round(reach));
    });
  const asked = new Set(start.map(({ at }) => at.join()));
  let front = unbeatenOf(start, wishes);
  const halved = new Map(front.map(({ at }) => [at.join(), 0]));
  const looks = new Map<string, number>();
  const known = asked.size;
  for (let round = 1; asked.size - known < probes && !stopped(); round++) {
    // Of those not yet looked at closely the least closely looked at, then the least often: the front grows evenly.
    const open = front.filter(({ at }) => (halved.get(at.join()) ?? 0) <= halvings);
    if (open.length === 0) return { front, settled: true };
    const nearness = ({ at }: Weighed): number => halved.get(at.join()) ?? 0;
    const turn = (one: Weighed): number =>
      nearness(one) * mostLooks + Math.min(mostLooks - 1, looks.get(one.at.join()) ?? 0);
    const pole = open.reduce((best, one) => (turn(one) < turn(best) ? one : best));
    const key = pole.at.join();
    looks.set(key, (looks.get(key) ?? 0) + 1);
    const reach = reachAt(nearness(pole));
    const around = placesAround(pole.at, reach, settings, round);
    const worths = await weigh(around);
    if (worths.some((one) => one === null || one === undefined)) break;
    for (const at of around) asked.add(at.join());
    const before = new Set(front.map(({ at }) => at.join()));
    const found = around.map((at, k) => ({ at, worth: worths[k] as Weighed['worth'] }));
    front = unbeatenOf([...front, ...found], wishes);
    const fresh = front.filter(({ at }) => !before.has(at.join()));
    for (const { at } of fresh) if (!halved.has(at.join())) halved.set(at.join(), nearness(pole));
    if (fresh.length === 0) halved.set(key, nearness(pole) + 1);
  }
  return { front, settled: false };
}

/** Halvings after which a reach is one step. */
function halvingsFor(reach: number): number {
  let halvings = 0;
  for (let left = reach; Math.round(left) > 1; left /= 2) halvings++;
  return halvings;
}

/** Places at a reach along every number and along the round's own directions, both ways, inside the lattice, each once. */
function placesAround(
  pole: LatticePlace,
  reach: readonly number[],
  settings: readonly number[],
  round: number,
): LatticePlace[] {
  const straight = pole.map((_, k) => pole.map((_, row) => (row === k ? 1 : 0)));
  const turned = pole.length > 1 ? turnedDirections(pole.length, round) : [];
  const places = new Map<string, LatticePlace>();
  for (const direction of [...straight, ...turned]) {
    // As far as the reach on the number that it moves most.
    const most = direction.reduce((sum, one) => Math.max(sum, Math.abs(one)), 0);
    for (const sign of [1, -1]) {
      const at = pole.map((steps, k) => {
        const to = steps + Math.round((sign * direction[k] * reach[k]) / most);
        return Math.min(Math.max(to, 0), settings[k] - 1);
      });
      if (at.some((steps, k) => steps !== pole[k])) places.set(at.join(), at);
    }
  }
  return [...places.values()];
}

/** Of places that keep every limit those that none beats; of places alike in every value the first. */
export function unbeatenOf(known: readonly Weighed[], wishes: readonly Wish[]): Weighed[] {
  const seen = new Set<string>();
  const kept = known.filter(({ worth }) => {
    const key = worth.values.join();
    if (worth.missed > 0 || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return unbeaten(
    kept.map(({ worth }) => worth.values),
    wishes,
  ).map((k) => kept[k]);
}
