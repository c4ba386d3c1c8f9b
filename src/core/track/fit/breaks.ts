import { atan2, hypot } from '../../math/index.ts';
import type { Chain } from './chain.ts';
import { type Fitted, refine } from './refine.ts';
import type { MeasuredPlace } from './types.ts';

/**
 * Where a run of places falls into the fewest single arcs (or clothoids, when `eased`) within `tolerance`, m, that need not meet: indices of the
 * places between pieces. Every part of a run that one piece fits is fitted by one too, so that going as far as possible each time
 * needs the fewest; the middle between that from either end is where a piece most likely ends.
 */
export function likelyBreaks(places: readonly MeasuredPlace[], tolerance: number, eased: boolean): number[] {
  const ahead = farthest(places, tolerance, eased);
  const last = places.length - 1;
  const back = farthest([...places].reverse(), tolerance, eased)
    .map((index) => last - index)
    .reverse();
  // Both have as many where fits are exact; a fit by squares may need one more from one end.
  return ahead.length === back.length
    ? ahead.map((index, k) => Math.round((index + back[k]) / 2))
    : ahead.length < back.length
      ? ahead
      : back;
}

function farthest(places: readonly MeasuredPlace[], tolerance: number, eased: boolean): number[] {
  const breaks: number[] = [];
  const last = places.length - 1;
  for (let from = 0; from < last; ) {
    const to = reach(places, from, tolerance, eased);
    if (to < last) breaks.push(to);
    from = to;
  }
  return breaks;
}

/** The farthest place that one piece from place `from` reaches: steps that double, then halve. */
function reach(places: readonly MeasuredPlace[], from: number, tolerance: number, eased: boolean): number {
  const last = places.length - 1;
  let good = Math.min(from + 1, last);
  let fit: Fitted | null = null;
  let bad = last + 1;
  for (let step = 1; good < last && bad - good > 1; ) {
    const to = bad > last ? Math.min(good + step, last) : (good + bad) >> 1;
    const run = places.slice(from, to + 1);
    const tried = onePiece(run, fit, eased);
    if (tried.greatest <= tolerance) {
      good = to;
      fit = tried;
      step *= 2;
    } else {
      bad = to;
    }
  }
  return good;
}

/** One arc or clothoid along a run of places, from what fitted a shorter run. */
export function onePiece(run: readonly MeasuredPlace[], shorter: Fitted | null, eased: boolean): Fitted {
  if (shorter === null || shorter.chainages.length < 4) return refine(throughThree(run, eased), run, chords(run));
  const chainages = [...shorter.chainages.slice(0, run.length)];
  for (let i = chainages.length; i < run.length; i++) chainages.push(chainages[i - 1] + between(run[i - 1], run[i]));
  const [piece] = shorter.chain.pieces;
  const length = chainages[chainages.length - 1];
  const { curvatures } = shorter.chain;
  // The clothoid goes on as it went.
  const grown = curvatures.map((curvature, i) =>
    i === 1 ? curvatures[0] + ((curvature - curvatures[0]) * length) / piece.length : curvature,
  );
  return refine({ ...shorter.chain, curvatures: grown, pieces: [{ ...piece, length }] }, run, chainages);
}

/** The circle through the first, the middle and the last place: curvature is four times the area over the product of the sides. */
function throughThree(run: readonly MeasuredPlace[], eased: boolean): Chain {
  const [a, b, c] = [run[0], run[run.length >> 1], run[run.length - 1]];
  const sides = between(a, b) * between(b, c) * between(a, c);
  const curvature = sides === 0 ? 0 : (2 * ((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x))) / sides;
  const lengths = chords(run);
  const length = lengths[lengths.length - 1];
  return {
    x: a.x,
    y: a.y,
    heading: atan2(c.y - a.y, c.x - a.x) - 0.5 * curvature * length,
    curvatures: eased ? [curvature, curvature] : [curvature],
    pieces: [{ length, from: 0, to: eased ? 1 : 0 }],
  };
}

/** Distance of two places in plan, m. */
export const between = (a: MeasuredPlace, b: MeasuredPlace): number => hypot(b.x - a.x, b.y - a.y);

/** Chainages of places along their chords, m. */
export function chords(places: readonly MeasuredPlace[]): number[] {
  const chainages = [0];
  for (let i = 1; i < places.length; i++) chainages.push(chainages[i - 1] + between(places[i - 1], places[i]));
  return chainages;
}
