export {
  addProfilePoint,
  addTrack,
  copyTurn,
  type ElementChange,
  easeJoin,
  elementStartsMm,
  insertElement,
  layTurnout,
  moveSupport,
  moveTurnout,
  type ProfileChange,
  parallelTrack,
  placedSupports,
  profileHeights,
  removeElement,
  removeProfilePoint,
  removeTrack,
  type SceneBranch,
  type SceneElement,
  type SceneTrack,
  type StartChange,
  setEasement,
  setElement,
  setProfilePoint,
  setStart,
  setSupportsEvery,
  splitElement,
  straightTrack,
  type TurnoutChange,
  trackLengthMm,
} from '../../scene/index.ts';
export { type Advice, advised } from '../../sim/advice/index.ts';
export type { Pass } from '../../sim/passes.ts';
export { besideSpacing } from './besideSpacing.ts';
export { draftAdvice, draftPasses, draftTrack } from './draftTrack.ts';
export { easeable, easementFor } from './easeable.ts';
export { type ElementField, elementFields, freshElement, kindWords } from './elementFields.ts';
export { renameTrack } from './renameTrack.ts';
