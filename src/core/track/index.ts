export { type Easement, easement, easementLengthForShift } from './easement.ts';
export { arc, helix, straight, transition } from './elements.ts';
export { gradeBreaks } from './joins.ts';
export { type Nearest, nearestChainage } from './nearest.ts';
export { plannedHeight, trackPoint } from './point.ts';
export { TrackError, type TrackProblem } from './problem.ts';
export { chainageAtRail, railAt } from './rail.ts';
export { reverseTrack } from './reverse.ts';
export { sectionRows } from './section.ts';
export { bentStrip } from './strip.ts';
export { makeTrack } from './track.ts';
export type {
  BucketIndex,
  CubicPieces,
  GradeBreak,
  GradePoint,
  JoinJump,
  PlanElement,
  PreparedPlan,
  PreparedProfile,
  ProfileSpec,
  StripSpec,
  SupportDeparture,
  Track,
  TrackPoint,
  TrackSpec,
} from './types.ts';
