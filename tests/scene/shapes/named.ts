import { type ShapeScale, type StartingShape, shapeScales, startingShapes } from '../../../src/scene/index.ts';

/** A scale by its name. */
export const scaleNamed = (name: string): ShapeScale => {
  const scale = shapeScales.find((one) => one.name === name);
  if (scale === undefined) throw new Error(name);
  return scale;
};

/** A starting shape by its id. */
export const shapeNamed = (id: string): StartingShape => {
  const shape = startingShapes.find((one) => one.id === id);
  if (shape === undefined) throw new Error(id);
  return shape;
};
