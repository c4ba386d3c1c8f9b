export { readField } from '../../scene/index.ts';
export { closestCall, type Exactness, type Gauge, type Probe, passesBy } from '../../sim/study/index.ts';
export { sameRailway } from '../sameRailway.ts';
export { asItIs } from './compareRuns.ts';
export type { Costs } from './costs.ts';
export { createStudies, type Settings, type Studies, type StudyActions } from './createStudies.ts';
export { type Knob, type KnobGroup, knobAt, knobGroups, usualRange } from './knobs.ts';
export type * from './types.ts';
