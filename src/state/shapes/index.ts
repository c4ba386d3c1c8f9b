export {
  type Because,
  type ShapedScene,
  type ShapeField,
  type ShapeScale,
  type ShapeValues,
  type StartingShape,
  shapeScales,
  startingShapes,
  usualValues,
} from '../../scene/shapes/index.ts';
export { type SceneSketch, sketchOf } from './sketch.ts';
