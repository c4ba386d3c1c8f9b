export { asPlanned } from './asPlanned.ts';
export { type BeamState, beamReactions, beamSag, beamState } from './beamState.ts';
export { type BranchStart, branchStart } from './branch.ts';
export { type Easement, easement, easementLengthForShift } from './easement.ts';
export { arc, helix, straight, transition } from './elements.ts';
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
export { gradeBreaks, profileCorners } from './jumps.ts';
export { type CantRun, type LaidCant, laidCant } from './laidCant.ts';
export { type LaidEasement, laidEasement } from './laidEasement.ts';
export { plannedCant } from './lean.ts';
export { type Nearest, nearestChainage } from './nearest.ts';
export { pieceAt, pieceHeight } from './pieces.ts';
export { newTrackPoint, plannedHeight, trackPoint } from './point.ts';
export { TrackError, type TrackProblem } from './problem.ts';
export { chainageAtRail, railAt } from './rail.ts';
export { railCentres } from './railCentres.ts';
export { reverseTrack } from './reverse.ts';
export { isJoint, type Route, type RouteStretch, routeTrack } from './route.ts';
export { type RulingGrade, type RulingGradeOptions, rulingGrade } from './rulingGrade.ts';
export { sectionRows } from './section.ts';
export { bentStrip } from './strip.ts';
export { type StripMaterial, type StripMaterialName, stripMaterials, stripSection } from './stripMaterial.ts';
export { makeTrack } from './track.ts';
export {
  type CrossingMeasure,
  type Crossover,
  crossingAngle,
  crossover,
  type Turnout,
  type TurnoutSpec,
  turnout,
} from './turnout.ts';
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
