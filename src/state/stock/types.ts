/** A number of a vehicle or a coupling that a person can change. */
export interface StockNumber {
  /** The way to it from its vehicle or coupling: "massG", "drive/stallForceN". */
  readonly field: string;
  readonly label: string;
  /** In the unit that ends the field's name: as given, or as usual. */
  readonly value: number;
  /** What it would be were it not given; null where it has to be. */
  readonly usual: number | null;
  /** It is given in the scene. */
  readonly given: boolean;
  /** One press of an arrow key. */
  readonly step: number;
  readonly least: number;
  readonly most: number;
  /** What the format says it means. */
  readonly about: string;
}

/** A number before it is read: its field, what it is called, and how it is found on what the solver takes, in the field's unit. */
export interface NumberRow<T> {
  readonly field: string;
  readonly label: string;
  readonly step: number;
  readonly of: (solved: T) => number;
}
