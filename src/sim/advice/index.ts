export { adviceOf } from './adviceOf.ts';
export { advised } from './advised.ts';
export { foulingPoints } from './foulingPoints.ts';
export { nearestNorm } from './nearestNorm.ts';
export type * from './types.ts';
