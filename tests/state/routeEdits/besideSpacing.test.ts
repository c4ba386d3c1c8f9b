import { describe, expect, it } from 'vitest';
import { shapeScales, startingShapes, usualValues } from '../../../src/scene/index.ts';
import { besideSpacing } from '../../../src/state/routeEdits/index.ts';

/** A starting shape in H0. */
const made = (id: string, values = {}) => {
  const shape = startingShapes.find((one) => one.id === id);
  const scale = shapeScales.find(({ name }) => name === 'HO');
  if (shape === undefined || scale === undefined) throw new Error(id);
  return shape.make(scale, { ...usualValues(shape, scale), ...values }).scene;
};

describe('what a track beside another is first laid at', () => {
  it('is 46 mm in H0 along straight track', () => {
    // Source: NEM 112, in a club's print.
    const ramp = made('ramp');
    expect(besideSpacing(ramp, ramp.tracks[0])).toMatchObject({ mm: 46, because: { source: /NEM 112/ } });
  });

  it('is wider round a curve: that of the row below the inner of the two', () => {
    // 650 mm less 46 mm are 604 mm, in the row of 600 mm: 55 mm. 640 mm less 46 mm are in that of 500 mm: 59 mm.
    const [wide, tight] = [650, 640].map((radiusMm) => made('helix', { radiusMm }));
    expect(besideSpacing(wide, wide.tracks[0]).mm).toBe(55);
    expect(besideSpacing(tight, tight.tracks[0]).mm).toBe(59);
  });
});
