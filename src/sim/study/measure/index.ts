export { keepsLimit, type MeasureLimit, missedLimits, usualBound } from './limits.ts';
export { type Measure, type MeasureId, measureById, measures } from './measures.ts';
export { type MeasureUnit, measureUnits, readAmount } from './units.ts';
