export { asPlanned } from './asPlanned.ts';
export { type CantRun, type LaidCant, laidCant } from './cant/laidCant.ts';
export { plannedCant } from './cant/lean.ts';
export { railCentres } from './cant/railCentres.ts';
export { type AlignmentFit, type FitOptions, fitAlignment, type MeasuredPlace } from './fit/index.ts';
export {
  type BendSpec,
  type Connection,
  type ConnectSpec,
  chainEnd,
  compoundEasement,
  connectPoses,
  type EasedHelix,
  easedHelix,
  type Fillet,
  fillet,
  type IntersectionAlignment,
  intersectionAlignment,
  type Pose,
  type ReverseBend,
  reverseBend,
  type Shortfall,
} from './joins/index.ts';
export { type Nearest, nearestChainage } from './nearest.ts';
export { type BranchStart, branchStart } from './plan/branch.ts';
export { type Easement, easement, easementLengthForShift } from './plan/easement.ts';
export { arc, helix, straight, transition } from './plan/elements.ts';
export { type LaidEasement, laidEasement } from './plan/laidEasement.ts';
export {
  type CrossingMeasure,
  type Crossover,
  crossingAngle,
  crossover,
  type Turnout,
  type TurnoutSpec,
  turnout,
} from './plan/turnout.ts';
export { newTrackPoint, plannedHeight, trackPoint } from './point.ts';
export { TrackError, type TrackProblem } from './problem.ts';
export { gradeBreaks, profileCorners } from './profile/jumps.ts';
export { pieceAt, pieceHeight } from './profile/pieces.ts';
export {
  type GradeAtPlace,
  type GradeLine,
  gradeLines,
  type PlannedBreak,
  plannedBreaks,
  steepest,
  turnsBetween,
} from './profile/plannedGrades.ts';
export { chainageAtRail, railAt } from './profile/rail.ts';
export { type RulingGrade, type RulingGradeOptions, rulingGrade } from './profile/rulingGrade.ts';
export { sectionRows } from './profile/section.ts';
export { reverseTrack } from './reverse.ts';
export { isJoint, type Route, type RouteStretch, routeTrack } from './route.ts';
export { type BeamState, beamReactions, beamSag, beamState } from './strip/beamState.ts';
export { bentStrip } from './strip/strip.ts';
export { type StripMaterial, type StripMaterialName, stripMaterials, stripSection } from './strip/stripMaterial.ts';
export { makeTrack } from './track.ts';
export type {
  BucketIndex,
  CantPoint,
  CantSpec,
  GradeBreak,
  GradePoint,
  HeightPieces,
  HeldHeights,
  JoinJump,
  LateralPoint,
  LateralSpec,
  MeasuredHeight,
  MeasuredSpec,
  PlanElement,
  PreparedCant,
  PreparedPlan,
  PreparedProfile,
  ProfileSpec,
  RailKink,
  StripLoad,
  StripSection,
  StripSpec,
  StripStep,
  SupportDeparture,
  Track,
  TrackPoint,
  TrackSpec,
} from './types.ts';
