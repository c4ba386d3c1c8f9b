export { collectFindings } from './collectFindings.ts';
export { reserve as pullReserve } from './explain/reach.ts';
export type { Driven } from './settingsAlong.ts';
export { type Standing, standingOf, standings, standingWords } from './standing.ts';
export { type PlacedTrial, subjectChainage } from './subjectPlace.ts';
export type * from './types.ts';
export { explainRisk } from './words/glosses.ts';
export { engineName, jointNumber, jointVehicles, vehicleName, vehicleNumber } from './words/naming.ts';
export { legAt, type NamedLeg, ownChainage, showAmount, showPlace } from './words/show.ts';
export {
  describeFinding,
  findingUnit,
  type Naming,
  riskTitle,
  riskUnitLabel,
  type Show,
  type Told,
} from './words/words.ts';
export { describeCure } from './words/wordsCures.ts';
export { describeEvent, eventTitle } from './words/wordsEvents.ts';
export { closestCall, describePass } from './words/wordsTrial.ts';
