/** What a place of the space searched comes to. */
export interface Worth {
  /** One number for every wish. Of no meaning where limits are missed. */
  readonly values: readonly number[];
  /** By how much limits are missed in all, in a measure of their own; 0: all are kept. Infinity: nothing can be built there at all. */
  readonly missed: number;
}

/** A place of the lattice searched, in whole steps from the low end of every number. */
export type LatticePlace = readonly number[];

export interface Weighed {
  readonly at: LatticePlace;
  readonly worth: Worth;
}

/** Tells what many places come to, in their order; null where it was stopped before. */
export type Weigh = (places: readonly LatticePlace[]) => Promise<(Worth | null)[]>;
