export { assessRun } from './assessRun.ts';
export {
  type BudgetLabel,
  type BudgetLine,
  type BudgetOptions,
  defaultBudget,
  type ErrorBudget,
  errorBudget,
  errorBudgets,
} from './errorBudget.ts';
export { framePoser } from './framePoser.ts';
export { type LeastMargin, type Looking, leastMargins, usualLooking } from './leastMargins.ts';
export { tippingSpeed } from './overturning.ts';
export { sampleInFull } from './readyRisks.ts';
export { riskById, risks } from './registry.ts';
export { newSample } from './sample.ts';
export { pullOf } from './stall.ts';
export { nearestStructure } from './structure.ts';
export { type Portal, portalStructures, type WallBeside, wallStructures } from './structureShapes.ts';
export type * from './types.ts';
