export { type Address, type Json, readAt, withAt } from './address.ts';
export { bounds } from './bounds.ts';
export { type CantGap, type PlacedCant, placedCants } from './cantPlaces.ts';
export { centrelineKind, type Imported, type ImportOptions, importedScene } from './centreline/index.ts';
export { changedScene, type SceneChange, sceneChanges } from './changes.ts';
export { trialDefaults } from './defaults.ts';
export {
  addCoupling,
  addOrder,
  addProfilePoint,
  addTrack,
  addVehicle,
  type BendChange,
  bendOn,
  changeRoom,
  changeSurroundings,
  copyTrain,
  copyTurn,
  copyVehicle,
  cornerPlace,
  type ElementChange,
  type EntryChange,
  easeJoin,
  easementPlaces,
  evenSupports,
  extendToPose,
  extendTrack,
  freeId,
  insertElement,
  layStraightOn,
  layTurnout,
  meanOffMm,
  moveCorner,
  moveEnd,
  moveEntry,
  moveSupport,
  moveSupports,
  moveTurnout,
  type NewBend,
  type NewTrack,
  nearestOn,
  type OrderChange,
  offCornerLine,
  type ParallelOptions,
  type ProfileChange,
  parallelTrack,
  planElement,
  type RoomChange,
  type RoomPlace,
  removeElement,
  removeEntry,
  removeOrder,
  removeProfilePoint,
  removeSupports,
  removeTrack,
  removeTrain,
  removeTrial,
  removeVehicle,
  renameTrain,
  renameTrial,
  type StartChange,
  type SupportSpan,
  type Surroundings,
  setAllEasements,
  setBend,
  setBogies,
  setBuffers,
  setCoupling,
  setCouplingField,
  setCouplingKind,
  setEasement,
  setElement,
  setEntry,
  setFollows,
  setOrder,
  setProfilePoint,
  setStart,
  setStop,
  setSupportsEvery,
  setTrialEnd,
  setVehicleField,
  shortened,
  splitElement,
  straightTrack,
  supportsAsPlanned,
  supportsWith,
  type TurnoutChange,
  tidy,
  turnoutNear,
  turnoutTowards,
} from './edits/index.ts';
export { type FieldLimits, fieldLimits } from './fieldLimits.ts';
export { type FieldReading, fieldName, fieldUnit, readField } from './fieldText.ts';
export { takingOver, trialsBefore, trialsTogether } from './goingOn.ts';
export { type JsonSchema, sceneJsonSchema } from './jsonSchema.ts';
export type { SceneLineside } from './linesideSchema.ts';
export { nearestWords } from './nearestWord.ts';
export { isNoScene } from './noScene.ts';
export type { SceneCorner } from './outlineSchema.ts';
export { type ParsedScene, parseScene } from './parse.ts';
export {
  elementCurvatures,
  elementLengthMm,
  elementStartsMm,
  type PlacedPoint,
  type PlacedSupport,
  placedSupports,
  placeMm,
  profileHeights,
  startTurnout,
  stripJointsMm,
  trackLengthMm,
} from './places.ts';
export type { Problem } from './problems.ts';
export { type SceneQuantity, sceneQuantities } from './quantities.ts';
export {
  covers,
  extentOfObstacle,
  isIn,
  isInside,
  type SceneBaseboard,
  type SceneDoor,
  type SceneObstacle,
  type SceneRoom,
  type SceneRound,
  sideMm,
  standingEdges,
  twiceArea,
} from './room/index.ts';
export type { Scene, SceneStructure } from './schema.ts';
export { serialiseScene } from './serialise.ts';
export {
  type Because,
  type Proposed,
  type ShapedScene,
  type ShapeField,
  type ShapePromise,
  type ShapeScale,
  type ShapeValues,
  type SpacingUse,
  type StartingShape,
  shapeScaleOf,
  shapeScales,
  spacingFor,
  startingShapes,
  straightSpacingFor,
  usualValues,
} from './shapes/index.ts';
export { acrossMm, sharedStretches, standingOn } from './sharedWay.ts';
export {
  couplingKinds,
  type SceneBuffers,
  type SceneCoupling,
  type SceneDrive,
  type SceneVehicle,
} from './stockSchema.ts';
export { cornersOf } from './structures.ts';
export type { SceneInstrument, SceneReading, SceneSurvey } from './surveySchema.ts';
export type {
  SceneBend,
  SceneBranch,
  SceneElement,
  ScenePlace,
  SceneProfilePoint,
  SceneSupports,
  SceneTrack,
} from './trackSchema.ts';
export { type TrainPlace, trainLength, trainPlaces } from './trains.ts';
export { leadingEnds } from './trialEnds.ts';
export type { SceneLeg, SceneOrder, SceneTrain, SceneTrial } from './trialSchema.ts';
export type { SceneVariant } from './variantSchema.ts';
export { variantScene } from './variants.ts';
export { vehicleOf } from './vehicles.ts';
export { reversedRoute, runsOn, sameWay, towardsOf, trackIdsOf, type WayLeg, wayLengthMm, wayOf } from './way.ts';
