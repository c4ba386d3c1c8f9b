/** A corner or point of a drawn line, mm; the way on to the next is an arc when it has a bulge. */
export interface DrawnPoint {
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm?: number;
  /** Tangent of a quarter of the angle that the arc to the next point turns through, left positive; 0 or left out: straight on. */
  readonly bulge?: number;
}

/** A line as drawn or measured. */
export type DrawnLine = readonly DrawnPoint[];

/** What could not be used, and where it stands in the file. */
export interface ReadingProblem {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly found: string;
}

/** What a file of centrelines says. */
export interface Drawing {
  readonly lines: readonly DrawnLine[];
  readonly problems: readonly ReadingProblem[];
  /** What was assumed where the file does not say, in sentences. */
  readonly assumed: readonly string[];
}

/** A file that is no centreline at all; the message is a sentence. */
export class CentrelineError extends RangeError {
  override readonly name = 'CentrelineError';
}
