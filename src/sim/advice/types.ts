/** How much an advice weighs: it will go wrong, it comes near, or it is good to know. */
export type AdviceWeight = 'wrong' | 'near' | 'note';

/** A change of the scene that answers an advice. `index`, `element` and `point` count a track's alignment and profile in the file from 0. */
export type AdviceEdit =
  | { readonly kind: 'ease'; readonly joins: readonly { readonly index: number; readonly lengthMm: number }[] }
  | { readonly kind: 'straight-between'; readonly element: number; readonly lengthMm: number }
  | { readonly kind: 'radius'; readonly element: number; readonly radiusMm: number }
  | { readonly kind: 'vertical-curve'; readonly point: number; readonly lengthMm: number }
  | { readonly kind: 'grade-point'; readonly point: number; readonly atMm: number };

interface Fact {
  readonly trackId: string;
  /** Where it is, and where the stretch it is about begins and ends, m along its track. */
  readonly chainage: number;
  readonly from: number;
  readonly to: number;
  readonly weight: AdviceWeight;
  /** What there is, and what it is held against, SI. */
  readonly value: number;
  readonly limit: number;
  readonly edit: AdviceEdit | null;
}

/** One track of a helix that several share: its steepest planned grade there (a ratio), and what it rises in a whole turn, m. */
export interface HelixTrack {
  readonly trackId: string;
  readonly radius: number;
  readonly grade: number;
  readonly perTurn: number;
}

/** The grade of a track in a helix (value) is steeper than that of the gentlest beside it (limit). */
export interface HelixGradesFact extends Fact {
  readonly kind: 'helix-grades';
  /** From the inside outwards. */
  readonly tracks: readonly HelixTrack[];
}

/** Least height from a track's rail to the deck above (value), against the tallest vehicle (limit), m. */
export interface HeadroomFact extends Fact {
  readonly kind: 'headroom';
  /** The track that passes there. */
  readonly over: string;
  readonly vehicle: string;
  /** Clear height of the norm, m. */
  readonly norm: number;
}

/** What keeps a vehicle from going round a curve: its coupling's swing, its rigid wheelbase, or that it is longer than the curve is wide. */
export type TooLongWhy = 'swing' | 'wheelbase' | 'width';

/** A vehicle that is too long for a radius; value and limit are angles, rad, but for the width, m. */
export interface TooLong {
  readonly vehicle: string;
  /** Which of the collection's vehicles it is: two may be called the same. */
  readonly stock: number;
  /** Over buffers, m. */
  readonly length: number;
  readonly why: TooLongWhy;
  readonly value: number;
  readonly limit: number;
}

/** The longest vehicle that goes round a radius (value) against the collection's longest (limit), m over buffers. */
export interface LongestVehicleFact extends Fact {
  readonly kind: 'longest-vehicle';
  readonly radius: number;
  /** The longest that goes round; null when none does. */
  readonly vehicle: string | null;
  /** Longest first. */
  readonly tooLong: readonly TooLong[];
  /** Least radius that every vehicle goes round, m. */
  readonly radiusForAll: number;
  /** How far its end, then its middle, stands off the middle line there, m, for a vehicle that goes round. */
  readonly throws: readonly [end: number, centre: number] | null;
}

/** Straight between two curves that turn opposite ways (value) against the longest vehicle (limit), m. */
export interface ReverseCurveFact extends Fact {
  readonly kind: 'reverse-curve';
  /** Both curves run out into the straight by easements. */
  readonly eased: boolean;
  readonly radii: readonly [number, number];
  /** The pair of vehicles with least to spare there. */
  readonly pair: readonly [string, string];
  /** How far its facing buffer heads stand aside, what they may, and the gap between their faces pushed through the slack, m; null without buffers. */
  readonly buffers: { readonly aside: number; readonly overlap: number; readonly gap: number } | null;
  /** How far its couplings swing there, and what they may, rad. */
  readonly swing: { readonly value: number; readonly limit: number };
}

/** How far the planned heights leave the plane of a turnout (value), m. */
export interface BentTurnoutFact extends Fact {
  readonly kind: 'bent-turnout';
  /** The track that leaves by it. */
  readonly branch: string;
}

/** Step of coupling heads where the grade changes at once (value) against half of what holds them (limit), m. */
export interface GradeBreakFact extends Fact {
  readonly kind: 'grade-break';
  /** Grade before and after, ratios. */
  readonly before: number;
  readonly after: number;
  readonly vehicle: string;
}

/** Easement that a helix has at its mouth (value, 0) against what the norm gives for it (limit), m. */
export interface MissingEasementFact extends Fact {
  readonly kind: 'missing-easement';
  readonly radius: number;
  /** How far the ends of the longest vehicle are thrown aside at once, m. */
  readonly aside: number;
}

/** Where vehicles stand on a track so that nothing on the other road of its turnout hits them: away from the turnout from these chainages on, m; null where there is no such place on it. */
export interface StandsClear {
  readonly trackId: string;
  /** With the room between bodies that the norm gives parallel tracks. */
  readonly clear: number | null;
  /** Up to here bodies touch. */
  readonly hit: number | null;
}

/** Way along the main track from a turnout to where a vehicle stands clear of its other road (value; Infinity: nowhere), and the spacing that the norm gives parallel tracks (limit), m. */
export interface FoulingPointFact extends Fact {
  readonly kind: 'fouling-point';
  /** The track that leaves by it. */
  readonly branch: string;
  /** On the main track, then on the branch. */
  readonly stands: readonly [StandsClear, StandsClear];
}

/** A plain fact about a railway that is being drawn. */
export type Advice =
  | HelixGradesFact
  | HeadroomFact
  | LongestVehicleFact
  | ReverseCurveFact
  | BentTurnoutFact
  | GradeBreakFact
  | MissingEasementFact
  | FoulingPointFact;

export type AdviceKind = Advice['kind'];
