import { bentStrip, makeTrack } from '../track/index.ts';
import type { HeightPieces, Track } from '../track/types.ts';
import type { SurveyInput } from './types.ts';

/**
 * The line as a linear function of what its supports depart from plan.
 *
 * The bent strip is a beam, so its departure is Σ xᵢ·φᵢ(s), φᵢ the strip bent over supports of which only i is off, by 1.
 * All φ share their pieces, so one look-up serves all.
 */
export interface LineShape {
  /** The plan, on a strip whose supports all stand as planned. */
  readonly plan: Track;
  readonly supports: readonly number[];
  /** φᵢ, one set of pieces a support. */
  readonly cardinals: readonly HeightPieces[];
}

/** Height, slope or bend at a place: what the plan has, and how much each support's departure adds (one entry a support). */
export interface LineValue {
  readonly planned: number;
  readonly weights: Float64Array;
}

/** Derivative of the height asked for. */
export type Order = 0 | 1 | 2;

/** Prepares the line of a survey. Throws TrackError for supports or hinges that hold no strip. */
export function lineShape({ track, supports, strip }: Pick<SurveyInput, 'track' | 'supports' | 'strip'>): LineShape {
  const { start, elements, profile } = track.spec;
  const sections = strip.sections?.map((section) => ({ ...section, weight: 0 }));
  const bare = { ...strip, ...(sections === undefined ? {} : { sections }) };
  const over = (departureOf: (support: number) => number) =>
    supports.map((chainage, support) => ({ chainage, departure: departureOf(support) }));
  // Steps at joints belong to the plan: they are there whatever the supports do.
  const planned = { points: profile.points, strip: { ...bare, supports: over(() => 0) } };
  const { steps: _steps, ...smooth } = bare;
  return {
    plan: makeTrack({ start, elements, profile: planned }),
    supports,
    cardinals: supports.map((_, off) => bentStrip({ ...smooth, supports: over((i) => (i === off ? 1 : 0)) })),
  };
}

/** The `order`-th derivative of the line at `chainage`; at a break, its value just after. */
export function lineAt(shape: LineShape, chainage: number, order: Order): LineValue {
  return lineIn(shape, pieceOf(shape.plan.profile, chainage), pieceOf(shape.cardinals[0], chainage), chainage, order);
}

/** The same within given pieces of plan and strip, so that both sides of a break can be asked. */
export function lineIn(shape: LineShape, plan: number, strip: number, chainage: number, order: Order): LineValue {
  return {
    planned: cubicAt(shape.plan.profile, plan, chainage, order),
    weights: Float64Array.from(shape.cardinals, (pieces) => cubicAt(pieces, strip, chainage, order)),
  };
}

/** A stretch over which plan and strip are one cubic each. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly plan: number;
  readonly strip: number;
}

/** Two breaks nearer than this are one, m: rounding of chainages. */
const sameBreak = 1e-9;

/** The stretches from the first support to the last, in order. */
export function stretchesOf({ plan, supports, cardinals }: LineShape): Stretch[] {
  const [first, last] = [supports[0], supports[supports.length - 1]];
  const inside = [...plan.profile.startChainage, ...cardinals[0].startChainage].filter(
    (s) => s > first + sameBreak && s < last - sameBreak,
  );
  const breaks = [first];
  for (const s of [...inside.sort((a, b) => a - b), last])
    if (s - breaks[breaks.length - 1] > sameBreak) breaks.push(s);
  return breaks.slice(1).map((to, i) => {
    const from = breaks[i];
    const middle = (from + to) / 2;
    return { from, to, plan: pieceOf(plan.profile, middle), strip: pieceOf(cardinals[0], middle) };
  });
}

/** planned + weights·departures. */
export function valueWith({ planned, weights }: LineValue, departures: ArrayLike<number>): number {
  let sum = planned;
  for (let i = 0; i < weights.length; i++) sum += weights[i] * departures[i];
  return sum;
}

function pieceOf({ startChainage }: HeightPieces, chainage: number): number {
  let low = 0;
  let high = startChainage.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (startChainage[middle] <= chainage) low = middle;
    else high = middle - 1;
  }
  return low;
}

function cubicAt({ startChainage, a, b, c, d }: HeightPieces, k: number, chainage: number, order: Order): number {
  const t = chainage - startChainage[k];
  if (order === 0) return a[k] + t * (b[k] + t * (c[k] + t * d[k]));
  if (order === 1) return b[k] + t * (2 * c[k] + t * 3 * d[k]);
  return 2 * c[k] + t * 6 * d[k];
}
