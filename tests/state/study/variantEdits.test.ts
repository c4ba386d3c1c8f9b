import { describe, expect, it } from 'vitest';
import { readAt, type Scene, variantScene } from '../../../src/scene/index.ts';
import { adopted, bare, merged, sceneOf, withoutVariant, withVariant } from '../../../src/state/study/variantEdits.ts';
import { sampleScene } from '../../scene/sample.ts';

const grade = 'tracks/line/profile/3/heightMm';
const mass = 'stock/coach/massG';
const width = 'deck/thicknessMm';

/** Heavy; heavy and steep; heavy and thick. */
function family(): Scene {
  const heavy = withVariant(sampleScene(), 'Heavy', null, [{ at: mass, to: 200 }]).scene;
  const steep = withVariant(heavy, 'Steep too', 'heavy', [{ at: grade, to: 240 }]).scene;
  return withVariant(steep, 'Thick too', 'heavy', [{ at: width, to: 12 }]).scene;
}

const read = (scene: Scene, id: string, at: string) => readAt(sceneOf(scene, id), at);

describe('a variant made from a variant', () => {
  it('has what its parent differs in and its own', () => {
    const scene = family();
    expect(scene.variants?.[1]).toEqual({
      id: 'steep-too',
      name: 'Steep too',
      from: 'heavy',
      changes: [{ at: grade, to: 240 }],
    });
    expect(read(scene, 'steep-too', mass)).toBe(200);
    expect(read(scene, 'steep-too', grade)).toBe(240);
    expect(readAt(scene, mass)).not.toBe(200);
  });

  it('merges into its parent, whose other children stay what they were', () => {
    const scene = family();
    const thick = sceneOf(scene, 'thick-too');
    const after = merged(scene, 'steep-too');
    expect(after.variants?.map(({ id }) => id)).toEqual(['heavy', 'thick-too']);
    expect(read(after, 'heavy', grade)).toBe(240);
    expect(sceneOf(after, 'thick-too')).toEqual(thick);
    expect(bare(after)).toEqual(bare(scene));
    expect(() => merged(scene, 'heavy')).toThrow(RangeError);
  });

  it('can become the railway and leaves every other railway as it was', () => {
    const scene = family();
    const before = { heavy: sceneOf(scene, 'heavy'), 'thick-too': sceneOf(scene, 'thick-too') };
    const after = adopted(scene, 'steep-too');
    expect(bare(after)).toEqual(sceneOf(scene, 'steep-too'));
    for (const [id, was] of Object.entries(before)) expect(sceneOf(after, id)).toEqual(was);
    expect(sceneOf(after, 'as-it-was-before')).toEqual(bare(scene));
    expect(variantScene(after, 'steep-too').ok).toBe(false);
  });

  it('keeps what its parent differed in when that goes', () => {
    const after = withoutVariant(family(), 'heavy');
    expect(after.variants?.every(({ from }) => from === undefined)).toBe(true);
    expect(read(after, 'steep-too', mass)).toBe(200);
    expect(read(after, 'thick-too', width)).toBe(12);
  });
});
