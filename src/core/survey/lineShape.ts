import { bentStrip, makeTrack, pieceAt } from '../track/index.ts';
import type { HeightPieces, Track } from '../track/types.ts';
import type { SurveyInput } from './types.ts';

/**
 * The line as a linear function of what its supports depart from plan.
 *
 * The bent strip is a beam, so its departure is what it sags by itself plus Σ xᵢ·φᵢ(s), φᵢ the weightless strip bent over supports of
 * which only i is off, by 1. EI·y⁗ = -weight is linear, so the sag is the same wherever the supports stand, and belongs to the plan: a quartic
 * between supports, 0 at them. All φ share their pieces, so one look-up serves all.
 */
export interface LineShape {
  /** The plan, on a strip whose supports all stand as planned, with its sag between them. */
  readonly plan: Track;
  readonly supports: readonly number[];
  /** Where the strip that the supports bend begins, m: the first of them, or the heel of a branch's turnout. */
  readonly from: number;
  /** Whether what lies before that is a turnout's, which no support moves. */
  readonly held: boolean;
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

/** What of a survey's input the line follows from. */
export type LineInput = Pick<SurveyInput, 'track' | 'supports' | 'strip' | 'heel'>;

/** A support this near behind the heel of a turnout, m, stands under it: the width of a saw cut. */
const heelSlack = 1e-3;

/** True for a support that bends the strip: one on the turnout of a branch stands as the main track has it. */
export const bendsStrip = (supports: readonly number[], heel: number | undefined, support: number): boolean =>
  heel === undefined || supports[support] > heel + heelSlack;

/** Prepares the line of a survey. Throws TrackError for supports or hinges that hold no strip. */
export function lineShape({ track, supports, strip, heel }: LineInput): LineShape {
  const { start, elements, profile, cant } = track.spec;
  const over = (departureOf: (support: number) => number) => [
    ...(heel === undefined ? [] : [{ chainage: heel, departure: 0 }]),
    ...supports
      .map((chainage, support) => ({ chainage, departure: departureOf(support) }))
      .filter((_, support) => bendsStrip(supports, heel, support)),
  ];
  // Steps at joints and the sag of the strip belong to the plan: they are there whatever the supports do.
  const held = profile.held && { held: profile.held };
  const planned = { points: profile.points, strip: { ...strip, supports: over(() => 0) }, ...held };
  const { steps: _steps, ...smooth } = strip;
  const sections = strip.sections?.map((section) => ({ ...section, weight: 0 }));
  return {
    plan: makeTrack({ start, elements, profile: planned, ...(cant && { cant }) }),
    supports,
    from: heel ?? supports[0],
    held: heel !== undefined,
    cardinals: supports.map((_, off) =>
      bentStrip({ ...smooth, ...(sections && { sections }), supports: over((i) => (i === off ? 1 : 0)) }),
    ),
  };
}

/** The `order`-th derivative of the line at `chainage`; at a break, its value just after. */
export function lineAt(shape: LineShape, chainage: number, order: Order): LineValue {
  const plan = pieceAt(shape.plan.profile, chainage);
  if (shape.held && chainage < shape.from) {
    const planned = derivativeAt(shape.plan.profile, plan, chainage, order);
    return { planned, weights: new Float64Array(shape.supports.length) };
  }
  return lineIn(shape, plan, pieceAt(shape.cardinals[0], chainage), chainage, order);
}

/** The same within given pieces of plan and strip, so that both sides of a break can be asked. */
export function lineIn(shape: LineShape, plan: number, strip: number, chainage: number, order: Order): LineValue {
  return {
    planned: derivativeAt(shape.plan.profile, plan, chainage, order),
    weights: Float64Array.from(shape.cardinals, (pieces) => derivativeAt(pieces, strip, chainage, order)),
  };
}

/** A stretch over which plan and strip are one polynomial each: the strip's φ cubics, the plan a quartic where the strip has weight. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly plan: number;
  readonly strip: number;
}

/** Two breaks nearer than this are one, m: rounding of chainages. */
const sameBreak = 1e-9;

/** The stretches that the supports bend, to the last of them, in order. */
export function stretchesOf({ plan, supports, from: first, cardinals }: LineShape): Stretch[] {
  const last = supports[supports.length - 1];
  const inside = [...plan.profile.startChainage, ...cardinals[0].startChainage].filter(
    (s) => s > first + sameBreak && s < last - sameBreak,
  );
  const breaks = [first];
  for (const s of [...inside.sort((a, b) => a - b), last])
    if (s - breaks[breaks.length - 1] > sameBreak) breaks.push(s);
  return breaks.slice(1).map((to, i) => {
    const from = breaks[i];
    const middle = (from + to) / 2;
    return { from, to, plan: pieceAt(plan.profile, middle), strip: pieceAt(cardinals[0], middle) };
  });
}

/** planned + weights·departures. */
export function valueWith({ planned, weights }: LineValue, departures: ArrayLike<number>): number {
  let sum = planned;
  for (let i = 0; i < weights.length; i++) sum += weights[i] * departures[i];
  return sum;
}

function derivativeAt(pieces: HeightPieces, k: number, chainage: number, order: Order): number {
  const t = chainage - pieces.startChainage[k];
  const [a, b, c, d, e] = [pieces.a[k], pieces.b[k], pieces.c[k], pieces.d[k], pieces.e[k]];
  if (order === 0) return a + t * (b + t * (c + t * (d + t * e)));
  if (order === 1) return b + t * (2 * c + t * (3 * d + t * 4 * e));
  return 2 * c + t * (6 * d + t * 12 * e);
}
