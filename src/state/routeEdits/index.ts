export {
  addProfilePoint,
  addTrack,
  copyTurn,
  type ElementChange,
  easeJoin,
  elementStartsMm,
  evenSupports,
  insertElement,
  layTurnout,
  meanOffMm,
  moveSupport,
  moveSupports,
  moveTurnout,
  type ProfileChange,
  parallelTrack,
  placedSupports,
  profileHeights,
  removeElement,
  removeProfilePoint,
  removeSupports,
  removeTrack,
  type SceneBranch,
  type SceneElement,
  type SceneTrack,
  type StartChange,
  type SupportSpan,
  setEasement,
  setElement,
  setProfilePoint,
  setStart,
  setSupportsEvery,
  splitElement,
  straightTrack,
  supportsAsPlanned,
  type TurnoutChange,
  trackLengthMm,
} from '../../scene/index.ts';
export { type Advice, advised } from '../../sim/advice/index.ts';
export type { Pass } from '../../sim/passes.ts';
export { besideSpacing, ledSpacing, normSpacings } from './besideSpacing.ts';
export { draftAdvice, draftPasses, draftTrack } from './draftTrack.ts';
export { easeable, easementFor } from './easeable.ts';
export { type ElementField, elementFields, freshElement, kindWords } from './elementFields.ts';
export { renameTrack } from './renameTrack.ts';
