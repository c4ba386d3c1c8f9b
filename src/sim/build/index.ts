export { buildPlan } from './buildPlan.ts';
export type * from './types.ts';
