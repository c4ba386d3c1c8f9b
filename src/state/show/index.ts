export { proposedTour } from './proposedTour.ts';
export { jointNumberOf, jointOfView, type StopVerdict, stopOnShow, trialOfStop, verdictOfStop } from './stops.ts';
export type * from './types.ts';
