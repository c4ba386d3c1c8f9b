export { type Because, type ShapeScale, shapeScales } from './scales.ts';
export {
  type ShapedScene,
  type ShapeField,
  type ShapePromise,
  type ShapeValues,
  type StartingShape,
  usualValues,
} from './shape.ts';
export { startingShapes } from './startingShapes.ts';
