import type { LineShape } from '../lineShape.ts';
import type { Column } from '../residuals.ts';
import type { OtherUnknown, Row } from '../rows.ts';
import type { Reading, Slip, SlipKind, SurveyInput } from '../types.ts';

/** Something that could explain what the plan does not. */
export interface Candidate {
  readonly kind: SlipKind | 'support';
  /** Readings that it says are wrong; none for a support. */
  readonly readings: readonly number[];
  /** The support it is about; -1 without one. */
  readonly support: number;
  readonly at: Slip['at'];
  /** One free amount: how much of it is in each row. */
  readonly column?: Column;
  /** An amount beyond this is no such slip. */
  readonly largest?: number;
  /** What each support departs by for an amount of 1, for a fault of the line itself. */
  readonly pattern?: Float64Array;
  /** Or no free amount: these rows, by index, read otherwise; and what that says of the reading. */
  readonly instead?: ReadonlyMap<number, Row>;
  readonly amount?: number;
}

/** Candidates of one kind, and how many alternatives they were picked from: that many ways there are to be fooled. */
export interface Family {
  readonly candidates: readonly Candidate[];
  readonly alternatives: number;
}

/** What slips are looked for in. */
export interface SlipContext {
  readonly input: SurveyInput;
  readonly shape: LineShape;
  readonly others: readonly OtherUnknown[];
  /** The rows as they are now taken: slips already found are put right. */
  readonly rows: readonly Row[];
  readonly readings: readonly Reading[];
  /** Each row's residual over its own standard deviation, as it now stands. */
  readonly normalised: Float64Array;
}

/**
 * A reading that fits as well as this (normalised residual) is not asked whether it is a slip of its own: no slip worth
 * naming changes so little.
 */
export const fitsWell = 2;

/** A column with 1 in the rows of some readings. */
export const readingsColumn =
  (indices: ReadonlySet<number>): Column =>
  (rows) =>
    Float64Array.from(rows, (row) => (row.reading >= 0 && indices.has(row.reading) ? 1 : 0));

/** A column of departures by a pattern over the supports, beside how closely they are set. */
export const patternColumn =
  (pattern: Float64Array): Column =>
  (rows) =>
    Float64Array.from(rows, (row) => {
      let sum = 0;
      if (row.reading < 0) return sum;
      for (let i = 0; i < pattern.length; i++) sum += row.heights[i] * pattern[i];
      return sum;
    });
