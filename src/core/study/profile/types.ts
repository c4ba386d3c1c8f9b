import type { GradePoint, Track } from '../../track/types.ts';

/** Two places of which the first must lie above the second by at least so much; m. A null is a rail top that stays where it is. */
export interface Clearance {
  readonly above: number | null;
  readonly below: number | null;
  /** Height of the rail top that stays, m; of no meaning where both places are on the line. */
  readonly fixed: number;
  /** Rail top to rail top, m. */
  readonly least: number;
}

/** A line whose plan is settled and whose heights are wanted. SI; grades as ratios, positive uphill with growing chainage. */
export interface ProfileTask {
  /** Its plan counts, and its heights only where they tell which turn lies above which. */
  readonly track: Track;
  /** Heights that must be met. */
  readonly heights: readonly { readonly chainage: number; readonly height: number }[];
  /** Grades that must be met, as where the line joins another. */
  readonly grades: readonly { readonly chainage: number; readonly grade: number }[];
  readonly clearances: readonly Clearance[];
  /** Least radius of vertical curves, m. */
  readonly verticalRadius: number;
  /** Steepest grade anywhere, either way. */
  readonly steepest: number;
  /** Which way the loaded train climbs. */
  readonly towards: 'end' | 'start' | 'both';
  /** Grade that a curve is worth: this length, m, over the radius. */
  readonly curveLength: number;
  /** Length of the train over which grade and curves are averaged, m; 0 looks at single places. */
  readonly window: number;
  /** Farthest distance between the places where vertical curves may begin and end, m. */
  readonly every: number;
}

/** A profile in the form that a track takes, with what it comes to. */
export interface FoundProfile {
  readonly points: readonly GradePoint[];
  /** Greatest compensated grade over the window. */
  readonly ruling: number;
  readonly steepest: number;
  /** Tightest vertical radius, m; Infinity on an even grade. */
  readonly verticalRadius: number;
  /** By how much the worst height that was to be met is missed, m. */
  readonly heightMissed: number;
  /** Where each of the four is met, m; 0 where nothing is. */
  readonly at: {
    readonly steepest: number;
    readonly verticalRadius: number;
    readonly heightMissed: number;
    readonly clearanceSpare: number;
  };
  /** Least clearance kept less what was asked, m; Infinity where nothing was asked. Negative: missed. */
  readonly clearanceSpare: number;
}
