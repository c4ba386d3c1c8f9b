import type { GradePoint, PlanElement, TrackSpec } from '../types.ts';

/** A place measured on the centreline, m. */
export interface MeasuredPlace {
  readonly x: number;
  readonly y: number;
  /** Height of the rail top, m. */
  readonly z?: number;
}

export interface FitOptions {
  /** No place lies further from the alignment than this, m; heights likewise. */
  readonly tolerance: number;
  /** Curvature runs through without a jump: curves are eased by clothoids. Left out: straights and arcs that only share their tangents. */
  readonly eased?: boolean;
}

export interface AlignmentFit {
  readonly start: TrackSpec['start'];
  readonly elements: readonly PlanElement[];
  /** Plan length, m. */
  readonly length: number;
  /** Chainage of each place, m. */
  readonly chainages: readonly number[];
  /** Greatest distance of a place from the alignment in plan, m, and which place it is. */
  readonly distance: number;
  readonly furthest: number;
  /** Grades and their parabolas, when all places have heights. */
  readonly profile?: readonly GradePoint[];
  /** Greatest difference in height, m. */
  readonly heightDistance?: number;
}
