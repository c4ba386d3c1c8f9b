export { type Address, type Json, readAt, withAt } from './address.ts';
export { type CantGap, type PlacedCant, placedCants } from './cantPlaces.ts';
export { centrelineKind, type Imported, type ImportOptions, importedScene } from './centreline/index.ts';
export { changedScene, type SceneChange, sceneChanges } from './changes.ts';
export { nearestWords } from './checks/nearestWord.ts';
export type { Problem } from './checks/problems.ts';
export { couplingDefaults, driveDefaults, rollingDefaults, tableGaugeMm, trialDefaults } from './defaults.ts';
export {
  addCoupling,
  addOrder,
  addProfilePoint,
  addTourStop,
  addTrack,
  addVehicle,
  type BendChange,
  bendOn,
  changeRoom,
  changeSurroundings,
  changeTourStop,
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
  moveTourStop,
  moveTurnout,
  type NewBend,
  type NewTourStop,
  type NewTrack,
  namedStops,
  nearestOn,
  newId,
  type OrderChange,
  offCornerLine,
  type ParallelOptions,
  type ProfileChange,
  parallelTrack,
  planElement,
  putTour,
  type RoomChange,
  type RoomPlace,
  removeElement,
  removeEntry,
  removeOrder,
  removeProfilePoint,
  removeSupports,
  removeTourStop,
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
  type TourStopChange,
  type TurnoutChange,
  tidy,
  turnoutNear,
  turnoutTowards,
} from './edits/index.ts';
export { type FieldReading, fieldName, fieldUnit, readField } from './fieldText.ts';
export { takingOver, trialsBefore, trialsTogether } from './goingOn.ts';
export { isNoScene } from './noScene.ts';
export { inPage, sceneInPage } from './pageText.ts';
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
export { bounds } from './schema/bounds.ts';
export { type FieldLimits, fieldLimits } from './schema/fieldLimits.ts';
export { type JsonSchema, sceneJsonSchema } from './schema/jsonSchema.ts';
export type { SceneLineside } from './schema/linesideSchema.ts';
export type { SceneCorner } from './schema/outlineSchema.ts';
export { type SceneQuantity, sceneQuantities } from './schema/quantities.ts';
export type { Scene, SceneStructure } from './schema/schema.ts';
export {
  couplingKinds,
  type SceneBuffers,
  type SceneCoupling,
  type SceneDrive,
  type SceneVehicle,
} from './schema/stockSchema.ts';
export type { SceneInstrument, SceneReading, SceneSurvey } from './schema/surveySchema.ts';
export type { SceneTourStop, SceneTourView } from './schema/tourSchema.ts';
export type {
  SceneBend,
  SceneBranch,
  SceneElement,
  ScenePlace,
  SceneProfilePoint,
  SceneSupports,
  SceneTrack,
} from './schema/trackSchema.ts';
export type { SceneLeg, SceneOrder, SceneTrain, SceneTrial } from './schema/trialSchema.ts';
export type { SceneVariant } from './schema/variantSchema.ts';
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
export { cornersOf } from './structures.ts';
export { type TrainPlace, trainLength, trainPlaces } from './trains.ts';
export { leadingEnds } from './trialEnds.ts';
export { variantScene } from './variants.ts';
export { vehicleOf } from './vehicles.ts';
export { reversedRoute, runsOn, sameWay, towardsOf, trackIdsOf, type WayLeg, wayLengthMm, wayOf } from './way.ts';
