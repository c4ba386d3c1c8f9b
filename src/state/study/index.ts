export { readField } from '../../scene/index.ts';
export {
  closestCall,
  type Exactness,
  type Gauge,
  type Measure,
  type MeasureId,
  type MeasureLimit,
  type MeasureUnit,
  measureById,
  measures,
  missedLimits,
  type Probe,
  passesBy,
  readAmount,
  usualBound,
} from '../../sim/study/index.ts';
export { closersOf, type RoomKind, type RouteAim } from '../../sim/study/route/index.ts';
export { sameRailway } from '../sameRailway.ts';
export { asItIs } from './compareRuns.ts';
export { createStudies, type Settings, type Studies, type StudyActions } from './createStudies.ts';
export { type Knob, type KnobGroup, knobAt, knobGroups, placeWords, usualRange } from './knobs.ts';
export { type MergeConflict, type MergeSide, mergeConflicts, mergeTargets } from './merging.ts';
export { roomKept } from './routeRuns.ts';
export type * from './types.ts';
