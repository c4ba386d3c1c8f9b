export { type Because, type Proposed, type ShapeScale, shapeScaleOf, shapeScales } from './scales.ts';
export {
  type ShapedScene,
  type ShapeField,
  type ShapePromise,
  type ShapeValues,
  type StartingShape,
  usualValues,
} from './shape.ts';
export { type SpacingUse, spacingFor, straightSpacingFor } from './spacing.ts';
export { startingShapes } from './startingShapes.ts';
