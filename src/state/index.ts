export {
  addOrder,
  removeOrder,
  removeTrial,
  renameTrial,
  setFollows,
  setOrder,
  setStop,
  setTrialEnd,
} from '../scene/index.ts';
export { copyKept, sceneOfKept } from './copyKept.ts';
export { createSession } from './createSession.ts';
export { beginsWords, trialsToGoOnFrom } from './goingOn.ts';
export { keepScenes, type SceneKeeper } from './keepScenes.ts';
export { keepUnits, usualUnits } from './keepUnits.ts';
export { openKept } from './openKept.ts';
export { timeAtPlace } from './passing.ts';
export { type NamedPlace, placesOf } from './places.ts';
export type { FilePort, KeepOutcome, KeepPort, KeptScene, RailwayFile } from './ports.ts';
export { presentSetting } from './presentSetting.ts';
export { railwayFromLine } from './railwayFromLine.ts';
export { type Reference, referenceOf, referencePlaces, referenceVehicle } from './reference.ts';
export { renamedRailway, renameKept } from './renameKept.ts';
export type { Session, SessionActions } from './session.ts';
export { type TrainOfScene, trainOfScene, type VehicleGroup } from './trainOfScene.ts';
export type * from './types.ts';
export {
  describeMargin,
  describeOf,
  namingOf,
  placeWords,
  radiusText,
  remainderWords,
  sideEffectWords,
  titleOf,
} from './words.ts';
export { presentWorking, type WorkingWords } from './working.ts';
