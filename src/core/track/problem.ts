/** What is wrong with a track that cannot be made. */
export type TrackProblem =
  | 'no-elements'
  | 'bad-element'
  | 'bad-start'
  | 'no-grade-points'
  | 'bad-grade-point'
  | 'points-not-rising'
  | 'bad-vertical-curve'
  | 'curves-overlap'
  | 'curve-beyond-end'
  | 'bad-support'
  | 'supports-not-rising'
  | 'too-few-supports'
  | 'bad-hinge'
  | 'loose-strip'
  | 'bad-step'
  | 'bad-section'
  | 'bad-load'
  | 'bad-lateral'
  | 'bad-measured'
  | 'bad-held'
  | 'bad-branch'
  | 'bad-route'
  | 'bad-fit'
  | 'bad-cant'
  | 'cant-not-rising';

/** Thrown when a track specification has no geometry; the message is a sentence with chainage and amount. */
export class TrackError extends RangeError {
  readonly problem: TrackProblem;
  /** Where, m (NaN when the whole track is meant). */
  readonly chainage: number;
  /** By how much, m (NaN when there is no amount). */
  readonly amount: number;

  constructor(problem: TrackProblem, message: string, chainage = Number.NaN, amount = Number.NaN) {
    super(message);
    this.name = 'TrackError';
    this.problem = problem;
    this.chainage = chainage;
    this.amount = amount;
  }
}

/** A length for a sentence: metres, to a micrometre, without trailing zeros. */
export const inMetres = (length: number): string => `${Number(length.toFixed(6))} m`;
