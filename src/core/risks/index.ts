export { assessRun } from './assessRun.ts';
export {
  type BudgetLabel,
  type BudgetLine,
  type BudgetOptions,
  defaultBudget,
  type ErrorBudget,
  errorBudget,
  errorBudgets,
} from './heads/errorBudget.ts';
export { framePoser } from './moments/framePoser.ts';
export { type LeastMargin, type Looking, leastMargins, usualLooking } from './moments/leastMargins.ts';
export { sampleInFull } from './moments/readyRisks.ts';
export { newSample } from './moments/sample.ts';
export { tippingSpeed } from './overturning.ts';
export { riskById, risks } from './registry.ts';
export { type Portal, portalStructures, type WallBeside, wallStructures } from './room/structureShapes.ts';
export { pullOf } from './stall.ts';
export { nearestStructure } from './structure.ts';
export type * from './types.ts';
