/**
 * Over 300 lines for a reason: all that passes between the rooms of a survey is described in one place.
 *
 * A survey as plain data: what was read along a track, what it says of the height of every support, and what would put the
 * track right. SI throughout: lengths in m, a grade is rise over plan distance. Supports count from 0 here, from 1 wherever
 * a person reads them. A departure is built less planned height, up positive.
 */

import type { StripSpec, Track } from '../track/types.ts';

export type * from './mendTypes.ts';

/** A place along the track: at a support, or at a chainage. */
export type Place = { readonly support: number } | { readonly chainage: number };

/**
 * What a kind of reading is taken with. One reading errs with variance deviation² + step²/12; all readings of the
 * instrument share one error more, its zero error, of deviation `zero` (0: none).
 */
export interface Instrument {
  readonly id: string;
  /** Standard deviation of one reading apart from rounding: a grade for levels, m for everything else. */
  readonly deviation: number;
  /** Smallest step it shows or is read to, same unit; 0 when it shows everything. */
  readonly step: number;
  /** Standard deviation of the error that all its readings share, same unit. */
  readonly zero: number;
}

interface ReadingBase {
  /** What a person calls it: `reading 12`, `line 7`. */
  readonly name: string;
  /** Id of an instrument. */
  readonly instrument: string;
}

/** A level of `base` on two feet, along the track. Feet on a curve stand on its chord. */
export interface GradeReading extends ReadingBase {
  readonly kind: 'grade';
  readonly at: Place;
  /** Whether `at` is midway between the feet, or under the first of them. */
  readonly anchor: 'centre' | 'start';
  readonly base: number;
  /** dz/ds for growing chainage, whichever way round the level stood. */
  readonly grade: number;
  /** The unit the person wrote it in. */
  readonly unit: 'percent' | 'degree';
  /** -1 for the second face: the level turned end for end, so that its zero error changes sign. */
  readonly face: 1 | -1;
}

/** Height of the rail top at a place: above the datum of the plan, or against a sight line of unknown height. */
export interface HeightReading extends ReadingBase {
  readonly kind: 'height';
  readonly at: Place;
  readonly height: number;
  /** Name of the laser line or water level; null when heights are above the plan's own datum. */
  readonly line: string | null;
}

/** How much higher the rail top at `to` is than at `from`: a spacer between decks, or a step from support to support. */
export interface RiseReading extends ReadingBase {
  readonly kind: 'rise';
  readonly from: Place;
  readonly to: Place;
  /** What was read, without `board`. */
  readonly rise: number;
  /** Thickness of a board that lies between and was not read; 0 without one. */
  readonly board: number;
}

/** Gap under the middle of a straightedge laid along the track on its ends: a hollow is positive. */
export interface GapReading extends ReadingBase {
  readonly kind: 'gap';
  readonly at: Place;
  readonly base: number;
  readonly gap: number;
}

export type Reading = GradeReading | HeightReading | RiseReading | GapReading;

/** How the deck lies across, by a level on both rails: says nothing of the centreline, so it is estimated apart. */
export interface CrossReading extends ReadingBase {
  readonly at: Place;
  /** Rise from the left rail to the right one over their distance, looking along growing chainage. */
  readonly slope: number;
  /** The unit the person wrote it in. */
  readonly unit: 'percent' | 'degree';
}

/** Whatever a person reads. */
export type ReadingKind = Reading['kind'] | 'cross';

/** Everything a survey is estimated from. */
export interface SurveyInput {
  /** Its planned profile is the plan; supports that the track has as built are ignored. */
  readonly track: Track;
  /** Chainages of the supports, m, rising. */
  readonly supports: readonly number[];
  /** Of a branch: up to this chainage, m, the strip lies on its turnout as the main track has it, whatever supports are there. */
  readonly heel?: number;
  /** The strip that bends over them, and sags between them where its sections have weight. */
  readonly strip: Omit<StripSpec, 'supports' | 'loads'>;
  readonly instruments: readonly Instrument[];
  readonly readings: readonly Reading[];
  /** Cross-levels, and the distance between the rails, m. */
  readonly cross?: { readonly gauge: number; readonly readings: readonly CrossReading[] };
  /** Supports known to stand as planned: the datum. May be empty. */
  readonly fixed: readonly number[];
  /** Thickness of the deck, m: what is added or forgotten when a height is taken from the wrong face. 0 when not known. */
  readonly board: number;
  /** How closely supports are set when nothing goes wrong, standard deviation, m. */
  readonly setting: number;
}

/** What the readings say of one support. */
export interface SupportEstimate {
  readonly support: number;
  readonly chainage: number;
  /** Planned height of the rail top, m. */
  readonly planned: number;
  /** Least-squares departure from the readings alone, m; 0 where they cannot tell. */
  readonly departure: number;
  /** Its standard deviation, m; 0 for a support that is held, Infinity where the readings cannot tell. */
  readonly deviation: number;
  /** Smallest departure of this support alone that the readings would show four times in five, m; Infinity: none. */
  readonly detectable: number;
  /** Change of grade at the support that goes with it; 0 at the ends. */
  readonly detectableKink: number;
}

/** Something the readings leave open. */
export type Deficiency =
  /** All heights may move up and down together. */
  | { readonly kind: 'height'; readonly held: number }
  /** All heights may tilt together as well. */
  | { readonly kind: 'tilt'; readonly held: readonly [number, number] }
  /** Nothing tells the height of these supports. */
  | { readonly kind: 'unseen'; readonly supports: readonly number[] }
  /** Groups of supports are tied within themselves, not to each other; these were taken as planned instead. */
  | { readonly kind: 'apart'; readonly supports: readonly number[] };

/** One reading against the line that fits best. */
export interface ReadingFit {
  readonly reading: number;
  /** Expected standard deviation of the reading, its unit. */
  readonly deviation: number;
  /** Read less fitted, its unit. */
  readonly residual: number;
  /** Residual over its own standard deviation (the w-test); 0 where nothing checks the reading. */
  readonly normalised: number;
  /** Share of an error of this reading that shows in its residual, 0..1. */
  readonly redundancy: number;
}

/** Weighted least squares over all readings, slips put right. */
export interface Estimate {
  readonly supports: readonly SupportEstimate[];
  /** n × n, row by row, m²: covariance of the departures; rows of unseen supports hold 0. */
  readonly covariance: Float64Array;
  readonly deficiencies: readonly Deficiency[];
  readonly fits: readonly ReadingFit[];
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Probability of a χ² at least as large when the stated errors are right. */
  readonly probability: number;
}

/** A support that the readings show to be off. */
export interface WrongSupport {
  readonly support: number;
  readonly departure: number;
  readonly deviation: number;
  /** How far beyond what supports are set to, in standard deviations of the two together. */
  readonly statistic: number;
  /** A reading that would explain as much if it alone were wrong, or null: read it again before turning a nut. */
  readonly rival: number | null;
}

/** A usual slip, or a reading that fits nothing. */
export type SlipKind =
  /** Written as per cent, read as degrees: 2.2 that should be 3.84 %. */
  | 'percent-for-degrees'
  /** Written as degrees, read as per cent. */
  | 'degrees-for-percent'
  /** Taken one support further on or back. */
  | 'shifted'
  /** Every spacer off by the same: as read, or as built in, one a turn. */
  | 'spacers'
  /** Chainages or the plan's radius measured at the edge of the board. */
  | 'edge-radius'
  /** The deck's thickness forgotten, or counted twice, in a run of heights. */
  | 'board'
  /** The line itself stands higher from one support on: one spacer too thick below it. */
  | 'raised-from'
  /** A reading that fits nothing known. */
  | 'outlier';

export interface Slip {
  readonly kind: SlipKind;
  /** Indices of the readings concerned. */
  readonly readings: readonly number[];
  /**
   * How much: m for spacers (true less written), edge-radius (edge outside the centreline) and board (read less true);
   * supports moved for shifted (+1: was at the next); read less expected in the reading's own unit for the rest.
   */
  readonly amount: number;
  /** Standard deviation of the amount; 0 when it is not estimated. */
  readonly deviation: number;
  /** By how much χ² falls when the slip is put right. */
  readonly statistic: number;
  /** What the fall would have to exceed to be believed, all alternatives counted. */
  readonly critical: number;
  /** For raised-from: the first support that stands higher; else -1. */
  readonly support: number;
  /**
   * What is at fault: the readings alone, the plan (edge-radius: its radius is that of the edge), or the line as built
   * (spacers, raised-from: the supports stand where the readings say).
   */
  readonly at: 'readings' | 'plan' | 'line';
}

/** The simplest account of the readings: supports as planned save these, and these slips. */
export interface Explanation {
  readonly supports: readonly WrongSupport[];
  readonly slips: readonly Slip[];
  /** χ² and degrees of freedom of the plan alone, and of this account. */
  readonly before: { readonly chiSquare: number; readonly degreesOfFreedom: number };
  readonly after: { readonly chiSquare: number; readonly degreesOfFreedom: number; readonly probability: number };
  /** Zero error of each instrument that has one, and height of each sight line, as estimated. */
  readonly instruments: readonly { readonly id: string; readonly value: number; readonly deviation: number }[];
  /** True when no support is shown off: whatever is seen, noise (and slips) explain it. */
  readonly noiseExplains: boolean;
  /** True when χ² is still larger than one time in a thousand: the readings disagree more than their stated errors. */
  readonly disagree: boolean;
  /** Departures of this account, m: 0 where a support is not shown off. One a support. */
  readonly departures: Float64Array;
}

/** What is believed of the line as built: the account's wrong supports free, all others within `setting` of the plan. */
export interface Belief {
  readonly mean: Float64Array;
  /** n × n, row by row, m². */
  readonly covariance: Float64Array;
}

/** How the deck lies across at one place; lengths at the middles of the rail heads, m, the right rail over the left one. */
export interface CrossLevel {
  readonly chainage: number;
  /** The support it is at; null between two. */
  readonly support: number | null;
  readonly level: number;
  /** The plan's cant. */
  readonly planned: number;
  readonly departure: number;
  /** Its standard deviation, the instrument's zero in it. */
  readonly deviation: number;
  /** Shown to lie otherwise than planned, beyond what any hand sets to. */
  readonly wrong: boolean;
}

/** Change of cross-level from one place to the next. */
export interface Twist {
  /** Indices of the places. */
  readonly from: number;
  readonly to: number;
  /** Distance between them and change over it, m; the zero of the instrument is not in its deviation. */
  readonly over: number;
  readonly twist: number;
  readonly deviation: number;
  /** What a frame without bogies stands over that distance, m. */
  readonly limit: number;
  readonly verdict: 'within' | 'doubtful' | 'past';
}

/**
 * What is believed of how the deck leans beside the plan at places read across, as a slope: mean, standard deviation of each place's own,
 * and what the zero errors of the instruments move together, by independent factors of unit variance.
 */
export interface AcrossBelief {
  readonly mean: Float64Array;
  readonly own: Float64Array;
  readonly shared: readonly Float64Array[];
}

export interface TwistEstimate {
  readonly gauge: number;
  /** One entry a place. */
  readonly belief: AcrossBelief;
  /** In the order of the track. */
  readonly places: readonly CrossLevel[];
  readonly twists: readonly Twist[];
}

/** A reading worth taking. */
export interface ReadingAdvice {
  readonly kind: 'grade' | 'height';
  readonly support: number;
  readonly instrument: string;
  readonly base: number;
  /** What it is about: the support whose departure, or whose change of grade, is least decided. */
  readonly decides: 'departure' | 'kink';
  readonly about: number;
  /** Standard deviation of what it is about, before and after such a reading: m, or a change of grade. */
  readonly before: number;
  readonly after: number;
}

/** A survey worked out. */
export interface Survey {
  readonly input: SurveyInput;
  readonly explanation: Explanation;
  readonly estimate: Estimate;
  readonly belief: Belief;
  readonly next: ReadingAdvice | null;
  /** Null without cross-levels. */
  readonly twist: TwistEstimate | null;
}

/** Two surveys of the same supports: what the work between them did. */
export interface SurveyChange {
  readonly support: number;
  /** Later less earlier departure, m. */
  readonly change: number;
  readonly deviation: number;
  readonly statistic: number;
  /** True when chance alone would seldom show it, all supports counted. */
  readonly significant: boolean;
}
