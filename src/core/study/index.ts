export { type Area, type AreaSide, type AreaSpec, mapArea } from './area.ts';
export { latinHypercube } from './draws.ts';
export { unbeaten, type Wish } from './front.ts';
export { type Greatest, greatestWhole } from './greatest.ts';
export type { StudyHooks } from './hooks.ts';
export { type Edge, type Line, type LineSpec, sweepLine } from './line.ts';
export { type Proportion, proportion } from './proportion.ts';
export { rankCorrelation } from './ranks.ts';
