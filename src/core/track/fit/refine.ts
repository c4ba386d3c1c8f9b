import { cos, hypot, sin } from '../../math/index.ts';
import { type Chain, endCurvatures, footOf, type LaidChain, layChain, momentsAt, offsetAt, pieceOf } from './chain.ts';
import { solveDamped } from './solveDamped.ts';
import type { MeasuredPlace } from './types.ts';

/** A chain with how the places lie to it. */
export interface Fitted {
  readonly chain: Chain;
  /** Chainage of each place, m. */
  readonly chainages: readonly number[];
  /** Distance of each place, m, and the greatest. */
  readonly distances: readonly number[];
  readonly greatest: number;
}

/** Pieces stay this long at least, m: shorter ones say nothing, and are taken out by whoever counts pieces. */
export const SHORTEST_PIECE = 1e-4;

/** Steps of Gauss-Newton; from a near start they converge in five. */
const MOST_STEPS = 25;
/** Below this relative gain of the sum of squares the fit stands. */
const LEAST_GAIN = 1e-6;

/**
 * Fits all numbers of a chain to places in order, by damped Gauss-Newton on their distances: the first place holds the start
 * and the last one the end along the track. `weights` count places more or less, all alike when left out.
 */
export function refine(
  first: Chain,
  places: readonly MeasuredPlace[],
  guesses: readonly number[],
  weights?: readonly number[],
): Fitted {
  let now = lie(first, places, guesses, weights);
  let damping = 1e-6;
  for (let step = 0; step < MOST_STEPS; step++) {
    const { matrix, right, size } = normalEquations(now.chain, now.laid, places, now.chainages, weights);
    let better: ReturnType<typeof lie> | undefined;
    for (; damping < 1e6 && better === undefined; damping *= 10) {
      const move = solveDamped(matrix, right, size, damping);
      if (move === null) continue;
      const next = moved(now.chain, move);
      if (isWild(next)) continue;
      const tried = lie(next, places, now.chainages, weights);
      if (tried.cost < now.cost) better = tried;
    }
    if (better === undefined) break;
    damping = Math.max(damping / 100, 1e-9);
    const gain = now.cost - better.cost;
    now = better;
    if (gain <= LEAST_GAIN * now.cost) break;
  }
  return fitted(now);
}

/** No piece turns further, rad: a helix of a hundred turns. A step that leads beyond went wrong, and would be costly to lay. */
const MOST_TURN = 200 * Math.PI;

const isWild = (chain: Chain): boolean =>
  chain.pieces.some((piece) => {
    const [from, to] = endCurvatures(chain, piece);
    return !(Math.max(Math.abs(from), Math.abs(to)) * piece.length < MOST_TURN);
  });

/** Rounds of reweighting towards the least greatest distance (Lawson's way: weights times distances). */
const ROUNDS = 12;

/** Moves a fit towards the least greatest distance until `tolerance`, m, is met; the best found. */
export function levelled(fit: Fitted, places: readonly MeasuredPlace[], tolerance: number): Fitted {
  let best = fit;
  let now = fit;
  let weights = places.map(() => 1);
  for (let round = 0; round < ROUNDS && best.greatest > tolerance; round++) {
    weights = weights.map((weight, i) => weight * (0.05 + now.distances[i] / now.greatest));
    const mean = weights.reduce((sum, one) => sum + one, 0) / weights.length;
    weights = weights.map((weight) => weight / mean);
    now = refine(now.chain, places, now.chainages, weights);
    if (now.greatest < best.greatest) best = now;
  }
  return best;
}

interface Lying extends Omit<Fitted, 'greatest'> {
  readonly laid: LaidChain;
  readonly cost: number;
}

const fitted = ({ chain, chainages, distances }: Lying): Fitted => ({
  chain,
  chainages,
  distances,
  greatest: Math.max(...distances),
});

/** How places lie to a chain as it is. */
function lie(
  chain: Chain,
  places: readonly MeasuredPlace[],
  guesses: readonly number[],
  weights?: readonly number[],
): Lying {
  const laid = layChain(chain);
  const chainages: number[] = [];
  const distances: number[] = [];
  let cost = 0;
  places.forEach((place, i) => {
    const fixed = i === 0 ? 0 : i === places.length - 1 ? laid.length : null;
    const foot =
      fixed === null ? footOf(laid, place, guesses[i]) : { ...offsetAt(laid, place, fixed), chainage: fixed };
    const distance = hypot(foot.left, foot.along);
    chainages.push(foot.chainage);
    distances.push(distance);
    cost += (weights?.[i] ?? 1) * distance * distance;
  });
  return { chain, laid, chainages, distances, cost };
}

function moved(chain: Chain, move: Float64Array): Chain {
  const curvatures = chain.curvatures.map((curvature, i) => curvature + move[3 + i]);
  const lengths = 3 + curvatures.length;
  return {
    x: chain.x + move[0],
    y: chain.y + move[1],
    heading: chain.heading + move[2],
    curvatures,
    pieces: chain.pieces.map((piece, k) => ({
      ...piece,
      length: Math.max(piece.length + move[lengths + k], SHORTEST_PIECE),
    })),
  };
}

/**
 * JᵀWJ and JᵀWr, r the offsets of the places. A change of heading by φ(u) along a piece moves what follows by i∫e^{iθ}φ du,
 * which the moments give: ∂θ/∂κ₀ = u - u²/2L, ∂θ/∂κ₁ = u²/2L, ∂θ/∂L = -σu²/2L.
 */
function normalEquations(
  chain: Chain,
  laid: LaidChain,
  places: readonly MeasuredPlace[],
  chainages: readonly number[],
  weights?: readonly number[],
) {
  const lengths = 3 + chain.curvatures.length;
  const size = lengths + chain.pieces.length;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const dx = new Float64Array(size);
  const dy = new Float64Array(size);
  const ends = chain.pieces.map((piece, k) => pieceMotion(chain, laid, k, piece.length, true));
  const last = places.length - 1;
  const row = new Float64Array(size);
  places.forEach((place, i) => {
    const s = chainages[i];
    const ending = i === last;
    const inside = ending ? chain.pieces.length - 1 : pieceOf(laid, s);
    const own = pieceMotion(chain, laid, inside, s - laid.pieces[inside].start, ending);
    dx.fill(0);
    dy.fill(0);
    dx[0] = 1;
    dy[1] = 1;
    dx[2] = chain.y - own.y;
    dy[2] = own.x - chain.x;
    for (let k = 0; k <= inside; k++) {
      const motion = k === inside ? own : ends[k];
      const { from, to } = chain.pieces[k];
      for (const [index, part] of [
        [from === null ? null : 3 + from, motion.start],
        [to === null ? null : 3 + to, motion.end],
        [lengths + k, motion.length],
      ] as const) {
        if (index === null) continue;
        dx[index] += part.x - part.turn * (own.y - motion.y);
        dy[index] += part.y + part.turn * (own.x - motion.x);
      }
    }
    const weight = weights?.[i] ?? 1;
    const c = cos(own.heading);
    const n = sin(own.heading);
    const { left, along } = offsetAt(laid, place, s);
    const add = (offset: number, ex: number, ey: number): void => {
      for (let p = 0; p < size; p++) row[p] = ex * dx[p] + ey * dy[p];
      for (let p = 0; p < size; p++) {
        if (row[p] === 0) continue;
        right[p] += weight * row[p] * offset;
        for (let q = 0; q <= p; q++) matrix[p * size + q] += weight * row[p] * row[q];
      }
    };
    add(left, -n, c);
    if (i === 0 || ending) add(along, c, n);
  });
  return { matrix, right, size };
}

/** How the place `t`, m, into piece `k` moves with the piece's curvatures and length; at its end the end itself moves too. */
function pieceMotion(chain: Chain, laid: LaidChain, k: number, t: number, ending: boolean) {
  const piece = laid.pieces[k];
  const { length, curvature, sharpness } = piece;
  const [, last] = endCurvatures(chain, chain.pieces[k]);
  const [re, im, re1, im1, re2, im2] = momentsAt(piece, t);
  const heading = piece.heading + t * (curvature + 0.5 * sharpness * t);
  const half = 1 / (2 * length);
  const bend = t * t * half;
  return {
    x: piece.x + re,
    y: piece.y + im,
    heading,
    start: { x: -(im1 - half * im2), y: re1 - half * re2, turn: t - bend },
    end: { x: -half * im2, y: half * re2, turn: bend },
    length: {
      x: sharpness * half * im2 + (ending ? cos(heading) : 0),
      y: -sharpness * half * re2 + (ending ? sin(heading) : 0),
      turn: -sharpness * bend + (ending ? last : 0),
    },
  };
}
