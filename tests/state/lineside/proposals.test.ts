import { describe, expect, it } from 'vitest';
import {
  changeSurroundings,
  parseScene,
  type Scene,
  serialiseScene,
  shapeScales,
  startingShapes,
  usualValues,
  vehicleOf,
} from '../../../src/scene/index.ts';
import { compileScene, compileTrial, structuresOf } from '../../../src/sim/index.ts';
import {
  proposedDeck,
  proposedMouth,
  proposedPier,
  proposedPlatform,
  proposedWall,
} from '../../../src/state/lineside/index.ts';
import { draftTrack } from '../../../src/state/routeEdits/index.ts';
import { bundledScene } from '../../scene/sample.ts';

function lineOf(scene: Scene) {
  const [{ id }] = scene.tracks;
  const drawn = draftTrack(scene, id);
  if (drawn === null) throw new Error('no track');
  return { id, drawn };
}

const everything = (scene: Scene): Scene => {
  const line = lineOf(scene);
  return changeSurroundings(scene, {
    lineside: [
      proposedMouth(scene, line, 'Mouth'),
      proposedPlatform(scene, line, 'Platform'),
      proposedWall(scene, line, 'Wall'),
    ],
    structures: [proposedDeck(scene, line, 'Bridge'), proposedPier(scene, line, 'Pier')],
  });
};

describe('what is put beside a line', () => {
  const scales = shapeScales.map((scale) => [scale.name, scale] as const);

  it.each(scales)('makes a sound scene in %s, on every starting shape', (_, scale) => {
    for (const shape of startingShapes) {
      const { scene } = shape.make(scale, usualValues(shape, scale));
      const parsed = parseScene(everything(scene));
      expect(parsed.ok ? [] : parsed.problems).toEqual([]);
    }
  });

  it('is as wide and as high as the norms ask in H0', () => {
    const [shape] = startingShapes.filter(({ id }) => id === 'empty-room');
    const [scale] = shapeScales.filter(({ name }) => name === 'HO');
    const { scene } = shape.make(scale, { lengthMm: 3000 });
    const line = lineOf(scene);
    // Source: NEM 105 (2013): BL1 + 2 × 0.3 G = 48 + 9.9 = 57.9 mm; NEM 102 (2017): HL4 = 59 mm, half of BL1 = 24 mm.
    expect(proposedMouth(scene, line, 'Mouth')).toMatchObject({ widthMm: 58, heightMm: 59, atMm: 1500 });
    expect(proposedWall(scene, line, 'Wall')).toMatchObject({ distanceMm: 24, heightMm: 59, fromMm: 1200, toMm: 1800 });
    const rail = line.drawn;
    const deck = proposedDeck(scene, line, 'Bridge');
    expect(deck.bottomMm).toBeGreaterThanOrEqual(rail.spec.profile.points[0].height * 1000 + 59);
    // 550 mm over the rail of the prototype at 1:87.1 is 6.3 mm.
    expect(Math.abs(proposedPlatform(scene, line, 'Platform').heightMm - 550 / 87.1)).toBeLessThanOrEqual(0.25);
  });

  it('leaves the trains on a straight free', () => {
    const [shape] = startingShapes.filter(({ id }) => id === 'empty-room');
    for (const [, scale] of scales) {
      const { scene } = shape.make(scale, { lengthMm: 3000 });
      const made = everything(scene);
      const half = Math.max(...scene.stock.map((file) => vehicleOf(scene, file).bodyWidth)) * 500;
      for (const thing of made.lineside ?? []) {
        if (thing.kind === 'portal') expect(thing.widthMm / 2).toBeGreaterThan(half);
        else expect(thing.distanceMm).toBeGreaterThan(half);
      }
      const compiled = compileScene(made);
      // A mouth is two jambs and a lintel; all of them come to the solver.
      expect(structuresOf(compiled).length).toBeGreaterThanOrEqual(7);
      expect(compileTrial(compiled, made.trials[0].id)).toBeTruthy();
    }
  });

  it('goes from the file with the last of it', () => {
    const scene = bundledScene('01-wren-gill.json');
    const made = everything(scene);
    expect(made.lineside).toHaveLength(3);
    const bare = changeSurroundings(made, { lineside: [], structures: [] });
    expect(serialiseScene(bare)).toBe(serialiseScene(changeSurroundings(scene, {})));
    expect('lineside' in bare).toBe(false);
    expect('structures' in bare).toBe(false);
  });
});
