import { square } from '../../math/index.ts';
import type { Wish } from '../front.ts';
import type { LatticePlace, Weigh, Weighed } from './types.ts';

/** A box of the unit cube, known by its middle. */
interface Box {
  readonly middle: readonly number[];
  /** How often each side has been cut in three. */
  readonly cuts: readonly number[];
  /** From the middle to a corner. */
  readonly reach: number;
  readonly found: Weighed;
}

export interface DivideSpec {
  /** How many settings each number has. */
  readonly settings: readonly number[];
  /** Which value decides, and what is wanted of it. */
  readonly value: number;
  readonly wish: Wish;
  /** No new round of cuts is begun once so many different places have been asked for. */
  readonly probes: number;
}

/** A box must promise to better the best by this share of it to be cut; the figure of Jones, Perttunen & Stuckman (1993), who find the method insensitive to it. */
const promise = 1e-4;

/**
 * Looks everywhere for the least (or greatest) value, and keeps cutting where it is good, by dividing rectangles: D. R. Jones, C. D. Perttunen & B. E. Stuckman,
 * "Lipschitzian optimization without the Lipschitz constant", J. Optim. Theory Appl. 79 (1993) 157. Of boxes alike in size and value one
 * is cut at a time. With no end to the probes it comes as near to every place as the lattice does. Places that miss limits count as
 * worse than the worst that keep them, by how much they miss (K. Deb 2000), so that limits need no weights.
 *
 * Middles of boxes are taken to the nearest place of the lattice; a side is cut no further once it is shorter than a step. Gives
 * every different place asked for, in order.
 */
export async function divideBoxes(spec: DivideSpec, weigh: Weigh, stopped: () => boolean): Promise<Weighed[]> {
  const { settings, probes } = spec;
  const sides = settings.length;
  const known = new Map<string, Weighed>();
  const deepest = settings.map((count) => depthFor(count));
  const placeAt = (middle: readonly number[]): LatticePlace =>
    middle.map((share, k) => Math.min(settings[k] - 1, Math.floor(share * settings[k])));

  async function weighAll(middles: readonly (readonly number[])[]): Promise<(Weighed | null)[]> {
    const places = middles.map(placeAt);
    const worths = await weigh(places);
    return places.map((at, k) => {
      const worth = worths[k];
      if (worth === null || worth === undefined) return null;
      const found = known.get(at.join()) ?? { at, worth };
      known.set(at.join(), found);
      return found;
    });
  }

  const boxAt = (middle: readonly number[], cuts: readonly number[], found: Weighed): Box => ({
    middle,
    cuts,
    reach: 0.5 * Math.sqrt(cuts.reduce((sum, one) => sum + square(sideAfter(one)), 0)),
    found,
  });

  const centre = settings.map(() => 0.5);
  const [first] = await weighAll([centre]);
  if (first === null) return [];
  let boxes: Box[] = [boxAt(centre, new Array<number>(sides).fill(0), first)];
  const canCut = ({ cuts }: Box): boolean => cuts.some((one, k) => one < deepest[k]);
  while (known.size < probes && !stopped()) {
    const promising = promisingBoxes(boxes.filter(canCut), scoreOf(spec, [...known.values()]));
    if (promising.length === 0) break;
    const plans = promising.map((box) => {
      const open = box.cuts.map((one, k) => (one < deepest[k] ? one : Number.POSITIVE_INFINITY));
      const longest = Math.min(...open);
      const along = open.flatMap((one, k) => (one === longest ? [k] : []));
      const aside = sideAfter(longest + 1);
      const middles = along.flatMap((k) => [-aside, aside].map((by) => shifted(box.middle, k, by)));
      return { box, along, middles };
    });
    const answers = await weighAll(plans.flatMap(({ middles }) => middles));
    if (answers.some((one) => one === null)) break;
    const score = scoreOf(spec, [...known.values()]);
    let next = 0;
    const born: Box[] = [];
    for (const { box, along, middles } of plans) {
      const own = answers.slice(next, next + middles.length) as Weighed[];
      next += middles.length;
      // The best new middles get the largest boxes: the side they lie on is cut first.
      const order = along
        .map((k, n) => ({ k, n, best: Math.min(score(own[2 * n]), score(own[2 * n + 1])) }))
        .sort((a, b) => a.best - b.best || a.k - b.k);
      let cuts = box.cuts;
      for (const { k, n } of order) {
        cuts = shifted(cuts, k, 1);
        born.push(boxAt(middles[2 * n], cuts, own[2 * n]), boxAt(middles[2 * n + 1], cuts, own[2 * n + 1]));
      }
      born.push(boxAt(box.middle, cuts, box.found));
    }
    const cut = new Set(promising);
    boxes = [...boxes.filter((box) => !cut.has(box)), ...born];
  }
  return [...known.values()];
}

/** The numbers with the one at `index` moved by so much. */
const shifted = (numbers: readonly number[], index: number, by: number): number[] =>
  numbers.map((one, k) => (k === index ? one + by : one));

/** Thirds of a side after so many cuts. */
function sideAfter(cuts: number): number {
  let side = 1;
  for (let k = 0; k < cuts; k++) side /= 3;
  return side;
}

/** Cuts after which a side holds no more than one setting. */
function depthFor(settings: number): number {
  let cuts = 0;
  for (let boxes = 1; boxes < settings; boxes *= 3) cuts++;
  return cuts;
}

/** One number for a place, less is better: its value, or for one that misses limits more than the worst that keeps them. */
function scoreOf({ value, wish }: DivideSpec, known: readonly Weighed[]): (one: Weighed) => number {
  const own = ({ worth }: Weighed): number => (wish === 'least' ? worth.values[value] : -worth.values[value]);
  const kept = known.filter(({ worth }) => worth.missed === 0);
  const worst = kept.reduce((most, one) => Math.max(most, own(one)), Number.NEGATIVE_INFINITY);
  const base = Number.isFinite(worst) ? worst : 0;
  const misses = known.flatMap(({ worth }) => (Number.isFinite(worth.missed) ? [worth.missed] : []));
  const unbuildable = 1 + misses.reduce((most, one) => Math.max(most, one), 0);
  return (one) =>
    one.worth.missed === 0 ? own(one) : base + (Number.isFinite(one.worth.missed) ? one.worth.missed : unbuildable);
}

/** Boxes that hold the best for some steepness of the function: the lower right hull of value over size, one of each size. */
function promisingBoxes(boxes: readonly Box[], score: (one: Weighed) => number): Box[] {
  const bySize = new Map<string, { box: Box; value: number }>();
  let least = Number.POSITIVE_INFINITY;
  for (const box of boxes) {
    const value = score(box.found);
    least = Math.min(least, value);
    const key = [...box.cuts].sort().join();
    const best = bySize.get(key);
    if (best === undefined || value < best.value) bySize.set(key, { box, value });
  }
  const rising = [...bySize.values()].sort((a, b) => a.box.reach - b.box.reach || a.value - b.value);
  return rising.flatMap(({ box, value }, k) => {
    let flattest = Number.NEGATIVE_INFINITY;
    let steepest = Number.POSITIVE_INFINITY;
    for (const [n, other] of rising.entries()) {
      if (n === k) continue;
      const wider = other.box.reach - box.reach;
      if (wider === 0) {
        if (other.value < value) return [];
      } else if (wider < 0) flattest = Math.max(flattest, (other.value - value) / wider);
      else steepest = Math.min(steepest, (other.value - value) / wider);
    }
    if (flattest > steepest || steepest <= 0) return [];
    const promised = value - steepest * box.reach;
    const worthwhile = least - promise * Math.abs(least);
    return steepest === Number.POSITIVE_INFINITY || promised <= worthwhile ? [box] : [];
  });
}
