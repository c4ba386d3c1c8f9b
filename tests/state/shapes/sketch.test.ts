import { describe, expect, it } from 'vitest';
import { shapeScales, sketchOf, startingShapes, usualValues } from '../../../src/state/shapes/index.ts';

/** The plan of a starting shape with its usual numbers in H0. */
const planOf = (id: string) => {
  const shape = startingShapes.find((one) => one.id === id);
  const scale = shapeScales.find(({ name }) => name === 'HO');
  if (shape === undefined || scale === undefined) throw new Error(id);
  const sketch = sketchOf(shape.make(scale, usualValues(shape, scale)).scene, 'above');
  if (sketch === null) throw new Error('not drawn');
  return sketch;
};

describe('the plan of a railway as a small drawing', () => {
  it('is true to shape where it is broad enough to be read', () => {
    const { broader, viewBox, width, depth } = planOf('dog-bone');
    expect(broader).toBe(1);
    const [, , across, down] = viewBox.split(' ').map(Number);
    // A border of a twenty-fifth of its length all round.
    expect(across).toBeCloseTo(width * 1.08, 2);
    expect(down).toBeCloseTo(depth + 0.08 * width, 2);
  });

  it.each(['throat', 'switchback'])('is drawn broader for a %s, whose tracks would run into one, and says so', (id) => {
    const { broader, viewBox, width, depth } = planOf(id);
    expect(broader).toBeGreaterThan(2);
    expect(broader).toBeLessThanOrEqual(10);
    const [, , , down] = viewBox.split(' ').map(Number);
    expect(down).toBeCloseTo(depth * broader + 0.08 * width, 2);
  });

  it('leaves a single straight as thin as it is', () => {
    expect(planOf('empty-room').broader).toBe(1);
  });
});
