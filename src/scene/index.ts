export { bounds } from './bounds.ts';
export { trialDefaults } from './defaults.ts';
export { type JsonSchema, sceneJsonSchema } from './jsonSchema.ts';
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
  stripJointsMm,
  trackLengthMm,
} from './places.ts';
export type { Problem } from './problems.ts';
export type { Scene, SceneBaseboard } from './schema.ts';
export { serialiseScene } from './serialise.ts';
export type { SceneBuffers, SceneCoupling, SceneDrive, SceneVehicle } from './stockSchema.ts';
export type {
  SceneBend,
  SceneElement,
  ScenePlace,
  SceneProfilePoint,
  SceneSupports,
  SceneTrack,
} from './trackSchema.ts';
export { type TrainPlace, trainLength, trainPlaces } from './trains.ts';
export { leadingEnds } from './trialEnds.ts';
export type { SceneOrder, SceneTrain, SceneTrial } from './trialSchema.ts';
export { vehicleOf } from './vehicles.ts';
