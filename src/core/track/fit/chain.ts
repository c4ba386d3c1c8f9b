import { cos, gaussLegendre, sin } from '../../math/index.ts';
import type { MeasuredPlace } from './types.ts';

/** A piece of a chain: its length, m, and which of the chain's curvatures hold at its ends; `null` is straight. */
export interface ChainPiece {
  readonly length: number;
  readonly from: number | null;
  readonly to: number | null;
}

/** An alignment by the numbers that can be fitted: where it starts, its curvatures, 1/m, and its lengths. Tangent by construction. */
export interface Chain {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly curvatures: readonly number[];
  readonly pieces: readonly ChainPiece[];
}

/** A laid piece: where it starts, and the integrals of e^{iθ}, u·e^{iθ} and u²·e^{iθ} up to each panel. */
export interface LaidPiece {
  readonly start: number;
  readonly length: number;
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly curvature: number;
  readonly sharpness: number;
  readonly panel: number;
  readonly sums: readonly Moments[];
}

/** Real and imaginary parts of ∫uᵐe^{iθ(u)}du for m = 0, 1, 2. */
export type Moments = readonly [number, number, number, number, number, number];

export interface LaidChain {
  readonly pieces: readonly LaidPiece[];
  readonly length: number;
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** A panel turns by no more than this, rad: eight Gauss points then err by less than 1e-13 of it. */
const PANEL_TURN = 1;
const rule = gaussLegendre(8);

const at = (curvatures: readonly number[], index: number | null): number => (index === null ? 0 : curvatures[index]);

/** Curvatures at the two ends of a piece, 1/m. */
export const endCurvatures = (chain: Chain, piece: ChainPiece): readonly [number, number] => [
  at(chain.curvatures, piece.from),
  at(chain.curvatures, piece.to),
];

/** Lays a chain out. */
export function layChain(chain: Chain): LaidChain {
  let { x, y, heading } = chain;
  let start = 0;
  const pieces = chain.pieces.map((piece): LaidPiece => {
    const { length } = piece;
    const [curvature, end] = endCurvatures(chain, piece);
    const sharpness = (end - curvature) / length;
    const turn = Math.max(Math.abs(curvature), Math.abs(end)) * length;
    const panels = Math.max(1, Math.ceil(turn / PANEL_TURN));
    const panel = length / panels;
    const sums: Moments[] = [[0, 0, 0, 0, 0, 0]];
    for (let j = 0; j < panels; j++) {
      sums.push(addMoments(sums[j], heading, curvature, sharpness, j * panel, (j + 1) * panel));
    }
    const laid = { start, length, x, y, heading, curvature, sharpness, panel, sums };
    x += sums[panels][0];
    y += sums[panels][1];
    heading += 0.5 * (curvature + end) * length;
    start += length;
    return laid;
  });
  return { pieces, length: start, x, y, heading };
}

function addMoments(
  sum: Moments,
  heading: number,
  curvature: number,
  sharpness: number,
  from: number,
  to: number,
): Moments {
  const half = 0.5 * (to - from);
  const middle = 0.5 * (to + from);
  let [a, b, c, d, e, f] = sum;
  for (let i = 0; i < rule.nodes.length; i++) {
    const u = middle + half * rule.nodes[i];
    const weight = half * rule.weights[i];
    const angle = heading + u * (curvature + 0.5 * sharpness * u);
    const re = weight * cos(angle);
    const im = weight * sin(angle);
    a += re;
    b += im;
    c += u * re;
    d += u * im;
    e += u * u * re;
    f += u * u * im;
  }
  return [a, b, c, d, e, f];
}

/** The integrals up to `t`, m, into a laid piece. */
export function momentsAt(piece: LaidPiece, t: number): Moments {
  const j = Math.max(0, Math.min(Math.floor(t / piece.panel), piece.sums.length - 2));
  return addMoments(piece.sums[j], piece.heading, piece.curvature, piece.sharpness, j * piece.panel, t);
}

/** The piece that holds chainage `s`, m. */
export function pieceOf(laid: LaidChain, s: number): number {
  let k = laid.pieces.length - 1;
  while (k > 0 && laid.pieces[k].start > s) k--;
  return k;
}

/** Steps of Newton towards the foot of a perpendicular; they start near. */
const FOOT_STEPS = 6;
/** A step of Newton is no longer than this share of the radius: where the centre is near, it would run away. */
const FOOT_REACH = 0.5;

/** How a place lies to a chain: chainage of its foot near a first guess, and how far it is off, to the left and along, m. */
export interface Foot {
  readonly chainage: number;
  readonly left: number;
  readonly along: number;
}

/** The foot of the perpendicular from a place, looked for from chainage `guess`, m, on; an end of the chain when beyond it. */
export function footOf(laid: LaidChain, place: MeasuredPlace, guess: number): Foot {
  let s = Math.min(Math.max(guess, 0), laid.length);
  for (let step = 0; ; step++) {
    const { left, along, curvature } = offsetAt(laid, place, s);
    if (step === FOOT_STEPS) return { chainage: s, left, along };
    const most = FOOT_REACH / Math.max(Math.abs(curvature), 1e-9);
    const move = along / Math.max(1 - curvature * left, FOOT_REACH);
    const next = Math.min(Math.max(s + Math.min(Math.max(move, -most), most), 0), laid.length);
    if (Math.abs(next - s) < 1e-12) return { chainage: s, left, along };
    s = next;
  }
}

/** How far a place lies to the left of the chain at `s`, m, and on along it. */
export function offsetAt(
  laid: LaidChain,
  place: MeasuredPlace,
  s: number,
): { readonly left: number; readonly along: number; readonly curvature: number } {
  const piece = laid.pieces[pieceOf(laid, s)];
  const t = s - piece.start;
  const [re, im] = momentsAt(piece, t);
  const angle = piece.heading + t * (piece.curvature + 0.5 * piece.sharpness * t);
  const dx = place.x - piece.x - re;
  const dy = place.y - piece.y - im;
  const c = cos(angle);
  const n = sin(angle);
  return { left: c * dy - n * dx, along: c * dx + n * dy, curvature: piece.curvature + piece.sharpness * t };
}
