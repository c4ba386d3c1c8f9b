export { collectFindings } from './collectFindings.ts';
export type * from './types.ts';
export { describeFinding, findingUnit, type Naming, riskTitle, riskUnitLabel, type Show, type Told } from './words.ts';
export { describeCure } from './wordsCures.ts';
export { describeEvent, eventTitle } from './wordsEvents.ts';
