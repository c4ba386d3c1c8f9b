import { emptyRoom } from './emptyRoom.ts';
import { helixShape } from './helix.ts';
import { rampShape } from './ramp.ts';
import type { StartingShape } from './shape.ts';

/** Everything a new railway can start from, in the order in which it is offered. */
export const startingShapes: readonly StartingShape[] = [emptyRoom, helixShape, rampShape];

export { type Because, type ShapeScale, shapeScales } from './scales.ts';
export {
  type ShapedScene,
  type ShapeField,
  type ShapePromise,
  type ShapeValues,
  type StartingShape,
  usualValues,
} from './shape.ts';
