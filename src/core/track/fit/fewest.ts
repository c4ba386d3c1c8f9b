import { between, likelyBreaks, onePiece } from './breaks.ts';
import type { Chain, ChainPiece } from './chain.ts';
import { type Fitted, levelled, refine, SHORTEST_PIECE } from './refine.ts';
import type { MeasuredPlace } from './types.ts';

/** More pieces than this follow the scatter of the places, not a track. */
export const MOST_PIECES = 60;

/**
 * The chain of fewest pieces found within `tolerance`, m; null when more than `MOST_PIECES` are needed. Pieces that need not meet give the start; where they cannot be
 * joined within the tolerance one is parted, and then each is taken out that can be. Best found, not proven.
 */
export function fewestPieces(places: readonly MeasuredPlace[], tolerance: number, eased: boolean): Fitted | null {
  const breaks = likelyBreaks(places, tolerance, eased);
  if (breaks.length >= MOST_PIECES) return null;
  let fit = levelled(joined(places, breaks, eased), places, tolerance);
  while (fit.greatest > tolerance) {
    if (fit.chain.pieces.length >= MOST_PIECES) return null;
    const parted = partedAtWorst(fit, eased);
    fit = levelled(refine(parted, places, fit.chainages), places, tolerance);
  }
  for (let shorter = oneLess(fit, places, tolerance, eased); shorter; ) {
    fit = shorter;
    shorter = oneLess(fit, places, tolerance, eased);
  }
  return plainest(fit, places, tolerance);
}

/** Pieces fitted one by one, then chained, each added to a chain that already lies well. */
function joined(places: readonly MeasuredPlace[], breaks: readonly number[], eased: boolean): Fitted {
  const ends = [...breaks, places.length - 1];
  let from = 0;
  let fit: Fitted | null = null;
  for (const to of ends) {
    const own: Fitted = onePiece(places.slice(from, to + 1), null, eased);
    if (fit === null) fit = own;
    else {
      const { chain, chainages } = fit;
      const start = chainages[chainages.length - 1];
      const grown: Chain = {
        ...chain,
        curvatures: [...chain.curvatures, own.chain.curvatures[eased ? 1 : 0]],
        pieces: [...chain.pieces, newPiece(own.chain.pieces[0].length, chain.curvatures.length, eased)],
      };
      const guesses = [...chainages, ...own.chainages.slice(1).map((s) => start + s)];
      fit = refine(grown, places.slice(0, to + 1), guesses);
    }
    from = to;
  }
  if (fit === null) throw new RangeError('A chain needs at least two places.');
  return fit;
}

/** The piece that curvature `index` closes; an eased one starts with the curvature before. */
const newPiece = (length: number, index: number, eased: boolean): ChainPiece => ({
  length,
  from: eased ? index - 1 : index,
  to: index,
});

/** Numbers the curvatures of a chain anew along its pieces. */
function renumbered(chain: Chain, values: readonly number[], lengths: readonly number[], eased: boolean): Chain {
  return {
    ...chain,
    curvatures: values,
    pieces: lengths.map((length, k) => newPiece(length, eased ? k + 1 : k, eased)),
  };
}

function partedAtWorst({ chain, chainages, distances, greatest }: Fitted, eased: boolean): Chain {
  const s = chainages[distances.indexOf(greatest)];
  const lengths = chain.pieces.map(({ length }) => length);
  let start = 0;
  let k = 0;
  while (k < lengths.length - 1 && start + lengths[k] <= s) start += lengths[k++];
  const { length } = chain.pieces[k];
  // Not in the outer fifths: the first and last place are mended by turning all of the piece.
  const cut = Math.min(Math.max(s - start, 0.2 * length), 0.8 * length);
  const values = [...chain.curvatures];
  if (eased) values.splice(k + 1, 0, values[k] + ((values[k + 1] - values[k]) * cut) / length);
  else values.splice(k + 1, 0, values[k]);
  lengths.splice(k, 1, cut, length - cut);
  return renumbered(chain, values, lengths, eased);
}

/** The chain without one of its pieces, the first that still fits, shortest first; null when all are needed. */
function oneLess(fit: Fitted, places: readonly MeasuredPlace[], tolerance: number, eased: boolean): Fitted | null {
  const { chain } = fit;
  const count = chain.pieces.length;
  if (count === 1) return null;
  const order = chain.pieces.map(({ length }, k) => ({ length, k })).sort((a, b) => a.length - b.length);
  for (const { k } of order) {
    for (const without of eased ? [k, k + 1] : [k]) {
      const values = chain.curvatures.filter((_, i) => i !== without);
      const lengths = chain.pieces.map(({ length }) => length);
      const [gone] = lengths.splice(k, 1);
      // Its length goes to its neighbours.
      if (k > 0 && k < count - 1) {
        lengths[k - 1] += gone / 2;
        lengths[k] += gone / 2;
      } else lengths[k === 0 ? 0 : k - 1] += gone;
      const tried = refine(renumbered(chain, values, lengths, eased), places, fit.chainages);
      const good =
        tried.greatest > tolerance && tried.greatest < 2 * tolerance ? levelled(tried, places, tolerance) : tried;
      if (good.greatest <= tolerance) return good;
    }
  }
  return null;
}

/** Makes straights of pieces, and arcs of clothoids, as long as the places allow it. */
function plainest(fit: Fitted, places: readonly MeasuredPlace[], tolerance: number): Fitted {
  let best = fit;
  const accept = (chain: Chain): void => {
    const tried = refine(chain, places, best.chainages);
    if (tried.greatest <= tolerance && tried.chain.pieces.every(({ length }) => length > SHORTEST_PIECE)) best = tried;
  };
  fit.chain.pieces.forEach((_, k) => {
    const { from, to } = best.chain.pieces[k];
    if (from !== null || to !== null) accept(withCurvature(best.chain, [from, to], null));
  });
  fit.chain.pieces.forEach((_, k) => {
    const { from, to } = best.chain.pieces[k];
    if (from !== null && to !== null && from !== to) accept(withCurvature(best.chain, [to], from));
  });
  return best;
}

/** A chain in which some curvatures are another one, or none at all. */
function withCurvature(chain: Chain, some: readonly (number | null)[], other: number | null): Chain {
  const become = (index: number | null): number | null => (some.includes(index) ? other : index);
  return {
    ...chain,
    pieces: chain.pieces.map((piece) => ({ ...piece, from: become(piece.from), to: become(piece.to) })),
  };
}

/** Where a run of places doubles back, if it does: the number of the place, from 1. */
export function turnsBack(places: readonly MeasuredPlace[]): number | null {
  for (let i = 1; i + 1 < places.length; i++) {
    const [a, b, c] = [places[i - 1], places[i], places[i + 1]];
    if ((b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < -0.5 * between(a, b) * between(b, c)) return i + 1;
  }
  return null;
}
