export { defaultForceModel, defaultRunOptions } from './defaults.ts';
export { type RunStepper, run, startRun } from './run.ts';
export { type SteadyOptions, steadyRun } from './steady.ts';
export type * from './types.ts';
