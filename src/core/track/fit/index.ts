export { fitAlignment } from './fitAlignment.ts';
export type { AlignmentFit, FitOptions, MeasuredPlace } from './types.ts';
