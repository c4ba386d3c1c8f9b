/** What a railway is built of, as plain data. SI units; heights from the datum of the railway, places in plan. */

/** What lies between the rail top and what a support carries, square to the track, m. */
export interface Layers {
  /** Sleepers and rail. */
  readonly track: number;
  readonly underlay: number;
  /** The strip, or deck. */
  readonly deck: number;
  /** The strip, half of it on either side of the track. */
  readonly width: number;
}

/** A level board that supports stand on, square to the room, m. */
export interface Board {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly top: number;
}

/** What a support stands on. */
export interface Standing {
  readonly on: 'board' | 'strip' | 'floor';
  /** Its height, m. */
  readonly height: number;
}

/** Where a support goes and how high: one row of the schedule. */
export interface SupportRow {
  /** As the builder counts, from 1. */
  readonly number: number;
  readonly chainage: number;
  readonly x: number;
  readonly y: number;
  /** Rail top, m. */
  readonly rail: number;
  /** Underside of the strip: what the support has to reach, m. */
  readonly underside: number;
  /** Against the support before, along the plan and in height, m; null at the first. */
  readonly from: { readonly plan: number; readonly rise: number } | null;
  /** Rise over plan distance here, uphill with growing chainage positive. */
  readonly grade: number;
  /** In a vertical curve, where the heights carry the rounding. */
  readonly rounding: boolean;
  /** Left edge of the strip above its right edge, m: what cant asks of a bearer across. */
  readonly acrossLeft: number;
  /** What lies below; null where nothing is known of. */
  readonly standing: Standing | null;
  /** Length of the riser from there to the underside, m; null where nothing is known of. */
  readonly riser: number | null;
}
