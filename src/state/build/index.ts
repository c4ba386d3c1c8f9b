export type { BuildPlan, TrackBuild } from '../../sim/build/index.ts';
export { type Building, createBuilding, planToBuild } from './createBuilding.ts';
export type { BuildingState, BuildSheet } from './types.ts';
