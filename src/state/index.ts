export { createSession, lensRate, type Session, type SessionActions } from './createSession.ts';
export { eventTimes, timeAfter, timeBefore } from './events.ts';
export { type NamedPlace, placesOf } from './places.ts';
export type { FilePort } from './ports.ts';
export { presentSetting } from './presentSetting.ts';
export { type TrainOfScene, trainOfScene, type VehicleGroup } from './trainOfScene.ts';
export type * from './types.ts';
export { describeMargin, describeOf, namingOf, placeWords, sideEffectWords, titleOf } from './words.ts';
export { presentWorking, type WorkingWords } from './working.ts';
