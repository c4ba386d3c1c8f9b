export { type Address, type Json, readAt, withAt } from './address.ts';
export { bounds } from './bounds.ts';
export { type CantGap, type PlacedCant, placedCants } from './cantPlaces.ts';
export { centrelineKind, type Imported, type ImportOptions, importedScene } from './centreline/index.ts';
export { changedScene, type SceneChange, sceneChanges } from './changes.ts';
export { trialDefaults } from './defaults.ts';
export {
  addProfilePoint,
  addTrack,
  type BendChange,
  cornerPlace,
  type ElementChange,
  easeJoin,
  extendToPose,
  extendTrack,
  insertElement,
  moveCorner,
  moveEnd,
  moveSupport,
  type NewBend,
  type NewTrack,
  type ParallelOptions,
  type ProfileChange,
  parallelTrack,
  planElement,
  type RoomPlace,
  removeElement,
  removeProfilePoint,
  removeTrack,
  type StartChange,
  setBend,
  setEasement,
  setElement,
  setProfilePoint,
  setStart,
  setSupportsEvery,
  shortened,
  splitElement,
  straightTrack,
  supportsWith,
  tidy,
} from './edits/index.ts';
export { type FieldReading, fieldName, fieldUnit, readField } from './fieldText.ts';
export { type JsonSchema, sceneJsonSchema } from './jsonSchema.ts';
export type { SceneLineside } from './linesideSchema.ts';
export { nearestWords } from './nearestWord.ts';
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
export type { Scene, SceneBaseboard } from './schema.ts';
export { serialiseScene } from './serialise.ts';
export {
  type Because,
  type ShapedScene,
  type ShapeField,
  type ShapePromise,
  type ShapeScale,
  type ShapeValues,
  type StartingShape,
  shapeScales,
  startingShapes,
  usualValues,
} from './shapes/index.ts';
export type { SceneBuffers, SceneCoupling, SceneDrive, SceneVehicle } from './stockSchema.ts';
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
export type { SceneOrder, SceneTrain, SceneTrial } from './trialSchema.ts';
export type { SceneVariant } from './variantSchema.ts';
export { variantScene } from './variants.ts';
export { vehicleOf } from './vehicles.ts';
