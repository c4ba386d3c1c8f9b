export { type CurveDragBand, curveDragBand } from './curveDrag.ts';
export {
  controlDefaults,
  defaultForceModel,
  defaultRunOptions,
  type ForceConstant,
  type ForceRow,
  forceDefaults,
} from './defaults.ts';
export { runEnsemble } from './ensemble.ts';
export { changedPath, routePath } from './path.ts';
export { type RestForces, restForces } from './restForces.ts';
export { type RunStepper, run, startRun, trainLength } from './run.ts';
export { type SteadyOptions, steadyRun } from './steady.ts';
export type * from './types.ts';
export { usualStep } from './usualStep.ts';
