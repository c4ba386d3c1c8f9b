/**
 * Mending as plain data: what may be done, what has to be kept, the problem that follows, and its answer. SI but in the problem itself.
 * Supports count from 0.
 */

/** How the height of a support can be changed. */
export type Adjuster =
  /** Nuts on threaded rod: any change; shown in turns of this pitch, m. */
  | { readonly kind: 'nut'; readonly thread: string; readonly pitch: number }
  /** Pieces of these thicknesses, m, put under: only up. `most` pieces at one support. */
  | { readonly kind: 'packing'; readonly thicknesses: readonly number[]; readonly most: number };

/** What the mended line has to keep. A limit left out does not count. */
export interface Limits {
  /** Greatest and least grade anywhere on the bent strip, dz/ds. */
  readonly greatestGrade?: number;
  readonly leastGrade?: number;
  /** Greatest change of grade at a support, from the chord before to the chord after it. */
  readonly greatestKink?: number;
  /** Least vertical radius anywhere, m. */
  readonly leastRadius?: number;
  /** Least clear height between the rail top and the underside of the deck above, m. */
  readonly headroom?: number;
  /** Largest change at one support, m: upwards, and downwards. */
  readonly largestRise?: number;
  readonly largestDrop?: number;
}

export type Objective = 'fewest' | 'flattest' | 'least';

/** Two places of the line one above the other, or a fixed deck above or below a place. */
export interface HeadroomPair {
  /** Chainage of the rail below, m, or null when a fixed rail is below. */
  readonly below: number | null;
  /** Chainage of the deck above, m, or null when a fixed deck is above. */
  readonly above: number | null;
  /** Height of the fixed rail or of the fixed deck's rail, m, where one of them is null. */
  readonly fixed: number;
  /** From the rail top of the deck above down to its underside, m. */
  readonly depth: number;
}

/** What is to be mended, and how. */
export interface MendTask {
  readonly objective: Objective;
  readonly limits: Limits;
  readonly adjuster: Adjuster;
  /** Supports that must stay as they are: fixed ends, and those that cannot be reached. */
  readonly locked: readonly number[];
  readonly pairs: readonly HeadroomPair[];
}

/** Which limit a row of the problem keeps, and where. */
export interface LimitPlace {
  readonly limit: keyof Limits;
  /** Chainage, m. */
  readonly chainage: number;
  /** Support, where the limit is about one; else -1. */
  readonly support: number;
}

/** Σ coefficient·variable ≤ most. */
export interface MendRow {
  readonly terms: readonly (readonly [variable: number, coefficient: number])[];
  readonly most: number;
  readonly place: LimitPlace;
}

export interface MendVariable {
  readonly name: string;
  readonly least: number;
  readonly most: number;
  readonly whole: boolean;
}

/** A mixed-integer linear problem as plain data. Lengths in mm and grades in per cent, so that its numbers are of one size. */
export interface MendProblem {
  readonly variables: readonly MendVariable[];
  /** Minimise these in turn, each kept at its least before the next. */
  readonly objectives: readonly (readonly (readonly [variable: number, coefficient: number])[])[];
  readonly rows: readonly MendRow[];
  /** Rows that tie variables together and are no limit of the person's; not relaxed. */
  readonly ties: readonly Omit<MendRow, 'place'>[];
  /** For each support the terms, in mm, whose sum is its change. */
  readonly change: readonly (readonly (readonly [variable: number, coefficient: number])[])[];
}

/** One line of the shim table. */
export interface ShimStep {
  readonly support: number;
  /** Rail top before and after, m. */
  readonly before: number;
  readonly after: number;
  /** after - before, m. */
  readonly change: number;
  /** Turns of the nut, up positive; null with packing. */
  readonly turns: number | null;
  /** Pieces to put under, thickness in m and how many; empty with nuts. */
  readonly pieces: readonly { readonly thickness: number; readonly count: number }[];
}

/** What a limit comes to along a line. */
export interface LimitCheck {
  readonly limit: keyof Limits;
  /** The worst value anywhere, in the limit's unit; the place of it. */
  readonly value: number;
  readonly chainage: number;
  readonly bound: number;
  readonly holds: boolean;
}

/** A limit that has to give way, and what it would have to become. */
export interface LimitConflict {
  readonly limit: keyof Limits;
  readonly place: LimitPlace;
  readonly bound: number;
  /** In the limit's own unit. */
  readonly needed: number;
}

/** How sure it is that no smaller answer exists. */
export interface MendProof {
  /** True when the solver proved that nothing better exists. */
  readonly optimal: boolean;
  /** Value reached and the least that could not be ruled out: supports, m, or a grade, as the objective is. */
  readonly value: number;
  readonly bound: number;
}

export type Mend =
  /** Nothing is shown to be off, or nothing that is off breaks a limit. */
  | {
      readonly outcome: 'nothing-to-mend';
      readonly reason: 'noise' | 'within-limits';
      readonly checks: readonly LimitCheck[];
      /** Probability that the line as built keeps all limits. */
      readonly probability: number;
    }
  | {
      readonly outcome: 'mended';
      readonly objective: Objective;
      /** True when wrong supports alone could not do it, so that right ones are set to suit them. */
      readonly others: boolean;
      /** In the order of work. */
      readonly steps: readonly ShimStep[];
      readonly proof: MendProof;
      /** Worst value of every limit before and after. */
      readonly before: readonly LimitCheck[];
      readonly after: readonly LimitCheck[];
      /** Probability that the line keeps all limits, before and after the work, over all that the readings leave open. */
      readonly probabilityBefore: number;
      readonly probabilityAfter: number;
      /** Departures after the work, m, one a support. */
      readonly departures: Float64Array;
    }
  | {
      readonly outcome: 'impossible';
      /** Each on its own is enough for all other limits to be kept; all at once where `together`. */
      readonly conflicts: readonly LimitConflict[];
      /** True when no single limit can be eased enough. */
      readonly together: boolean;
      /** A set of limits that cannot be kept together, none of which can be left out. */
      readonly irreducible: readonly LimitPlace[];
      /** Supports shown to be off but not to be touched, with which all limits could be kept; empty when that would not help. */
      readonly unlock: readonly number[];
      readonly checks: readonly LimitCheck[];
    };
