export { proposedTour } from './proposedTour.ts';
export { jointNumberOf, type StopVerdict, stopOnShow, trialOfStop, verdictOfStop } from './stops.ts';
export type * from './types.ts';
