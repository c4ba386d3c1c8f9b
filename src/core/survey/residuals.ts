import type { Row } from './rows.ts';

/** One more unknown beside zero errors and sight lines: how much of it is in each row, in the row's own unit. */
export type Column = (rows: readonly Row[]) => Float64Array;

/** What is let free before anything is looked for. */
export interface Unknowns {
  /** Zero errors and sight lines. */
  readonly others: number;
  /** Supports whose setting scatters; each has a row that says how closely it is set. */
  readonly settings: readonly number[];
}

/** How well a column explains what is left. */
export interface ColumnTest {
  /** Fall of χ² when the column is let in: the square of amount over deviation. */
  readonly statistic: number;
  readonly amount: number;
  readonly deviation: number;
  /** False when rounding alone, every reading erring the worst way, could look as much. */
  readonly beyondRounding: boolean;
}

/** What is left of the observations once some unknowns are let free, in standard deviations. */
export interface Leftover {
  /** Residual of each row over its deviation. */
  readonly residual: Float64Array;
  readonly chiSquare: number;
  /** Unknowns that the rows tell. */
  readonly rank: number;
  /** Orthonormal columns that span what has been let free. */
  readonly basis: readonly Float64Array[];
}

/** A column of which less than this share of the length is new counts as covered by the others. */
const covered = 1e-9;

/** The rows' residuals with the unknowns and the given columns free. */
export function leftover(rows: readonly Row[], { others, settings }: Unknowns, columns: readonly Column[]): Leftover {
  const basis: Float64Array[] = [];
  const letIn = (column: Float64Array): void => {
    const whole = dot(column, column);
    const rest = without(column, basis);
    const square = dot(rest, rest);
    if (!(square > covered * whole)) return;
    const length = Math.sqrt(square);
    basis.push(rest.map((value) => value / length));
  };
  for (let unknown = 0; unknown < others; unknown++) {
    letIn(
      whitened(
        rows,
        Float64Array.from(rows, (row) => row.others.reduce((sum, [u, f]) => (u === unknown ? sum + f : sum), 0)),
      ),
    );
  }
  for (const support of settings) {
    letIn(
      whitened(
        rows,
        Float64Array.from(rows, (row) => row.heights[support]),
      ),
    );
  }
  for (const column of columns) letIn(whitened(rows, column(rows)));
  const misfit = Float64Array.from(rows, (row) => (row.observed - row.planned) / row.deviation);
  const residual = without(misfit, basis);
  return { residual, chiSquare: dot(residual, residual), rank: basis.length, basis };
}

/** Tests one more column against what is left; null when the rows cannot tell it. */
export function testColumn(rows: readonly Row[], left: Leftover, column: Float64Array): ColumnTest | null {
  const raw = whitened(rows, column);
  const fresh = without(raw, left.basis);
  const square = dot(fresh, fresh);
  if (!(square > covered * dot(raw, raw))) return null;
  const along = dot(fresh, left.residual);
  let fake = 0;
  for (let i = 0; i < rows.length; i++) fake += (Math.abs(fresh[i]) * rows[i].halfStep) / rows[i].deviation;
  return {
    statistic: (along * along) / square,
    amount: along / square,
    deviation: 1 / Math.sqrt(square),
    beyondRounding: Math.abs(along) > fake,
  };
}

/** Amount of a column below which rounding could have made all of it, every reading erring the worst way; Infinity: none shows. */
export function roundingBound(rows: readonly Row[], left: Leftover, column: Float64Array): number {
  const raw = whitened(rows, column);
  const fresh = without(raw, left.basis);
  const square = dot(fresh, fresh);
  if (!(square > covered * dot(raw, raw))) return Number.POSITIVE_INFINITY;
  let fake = 0;
  for (let i = 0; i < rows.length; i++) fake += (Math.abs(fresh[i]) * rows[i].halfStep) / rows[i].deviation;
  return fake / square;
}

/** A column's entries over the rows' deviations. */
export const whitened = (rows: readonly Row[], column: Float64Array): Float64Array =>
  column.map((value, i) => value / rows[i].deviation);

/** Takes the parts along an orthonormal basis off, twice, because once leaves rounding of the size that is being tested for. */
export function without(column: Float64Array, basis: readonly Float64Array[]): Float64Array {
  const rest = Float64Array.from(column);
  for (let pass = 0; pass < 2; pass++) {
    for (const one of basis) {
      const part = dot(rest, one);
      for (let i = 0; i < rest.length; i++) rest[i] -= part * one[i];
    }
  }
  return rest;
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
