export interface Tooth {
  readonly key: string;
  readonly x: number;
  readonly chainage: number;
  /** Built minus planned, m. */
  readonly departure: number;
  readonly top: number;
  readonly height: number;
}

/** The comb of departures from plan, in pixels of the row. */
export interface Comb {
  readonly baseline: number;
  /** Pixels a millimetre: 6, or fewer when the departures need it. */
  readonly perMillimetre: number;
  readonly teeth: readonly Tooth[];
}
