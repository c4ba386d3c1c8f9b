import { describe, expect, it } from 'vitest';
import { readAt, type Scene, variantScene } from '../../../src/scene/index.ts';
import { mergeConflicts, merged, mergeTargets } from '../../../src/state/study/merging.ts';
import { adopted, bare, sceneOf, withoutVariant, withVariant } from '../../../src/state/study/variantEdits.ts';
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
    const after = merged(scene, 'steep-too', 'heavy');
    expect(after.variants?.map(({ id }) => id)).toEqual(['heavy', 'thick-too']);
    expect(read(after, 'heavy', grade)).toBe(240);
    expect(sceneOf(after, 'thick-too')).toEqual(thick);
    expect(bare(after)).toEqual(bare(scene));
  });

  it('merges into its parent after another did, and neither is lost', () => {
    const once = merged(family(), 'steep-too', 'heavy');
    expect(mergeConflicts(once, 'thick-too', 'heavy')).toEqual([]);
    const twice = merged(once, 'thick-too', 'heavy');
    expect(twice.variants?.map(({ id }) => id)).toEqual(['heavy']);
    expect([mass, grade, width].map((at) => read(twice, 'heavy', at))).toEqual([200, 240, 12]);
  });

  it('merges into the railway itself, which stays as a variant', () => {
    const scene = family();
    const [heavy, thick] = ['heavy', 'thick-too'].map((id) => sceneOf(scene, id));
    const after = merged(scene, 'steep-too', null);
    // Only what it differs in from the variant that it comes from: the mass is that one's.
    expect(readAt(after, grade)).toBe(240);
    expect(readAt(after, mass)).toBe(readAt(scene, mass));
    expect(sceneOf(after, 'as-it-was-before')).toEqual(bare(scene));
    expect(sceneOf(after, 'heavy')).toEqual(heavy);
    expect(sceneOf(after, 'thick-too')).toEqual(thick);
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

describe('two branches that changed the same', () => {
  /** One side makes coaches heavy and the deck thick, the other lighter and the line steep. */
  function sides(): Scene {
    const one = withVariant(sampleScene(), 'One', null, [
      { at: mass, to: 200 },
      { at: width, to: 12 },
    ]).scene;
    return withVariant(one, 'Other', null, [
      { at: mass, to: 100 },
      { at: grade, to: 240 },
    ]).scene;
  }

  it('are in conflict there, with what either has and what it was', () => {
    expect(mergeConflicts(sides(), 'one', 'other')).toEqual([
      { at: mass, was: readAt(sampleScene(), mass), merged: 200, into: 100 },
    ]);
    expect(() => merged(sides(), 'one', 'other')).toThrow(/stock\/coach\/massG: say whose value stays/);
  });

  it.each([
    ['merged', 200],
    ['into', 100],
  ] as const)('merge to what the chosen side (%s) has, and to the rest of both', (side, grams) => {
    const after = merged(sides(), 'one', 'other', new Map([[mass, side]]));
    expect(after.variants?.map(({ id }) => id)).toEqual(['other']);
    expect([mass, width, grade].map((at) => read(after, 'other', at))).toEqual([grams, 12, 240]);
  });

  it('are not where both changed it to the same', () => {
    const scene = withVariant(sides(), 'Third', null, [{ at: mass, to: 200 }]).scene;
    expect(mergeConflicts(scene, 'third', 'one')).toEqual([]);
    expect(read(merged(scene, 'third', 'one'), 'one', mass)).toBe(200);
  });

  it('are where one replaced what the other changed a part of', () => {
    const vehicles = 'trains/train/vehicles';
    const one = withVariant(sampleScene(), 'Shorter', null, [{ at: `${vehicles}/2/count`, to: 1 }]).scene;
    const scene = withVariant(one, 'Light', null, [{ at: vehicles, to: [{ stock: 'engine' }] }]).scene;
    expect(mergeConflicts(scene, 'shorter', 'light').map(({ at }) => at)).toEqual([vehicles]);
    const after = merged(scene, 'shorter', 'light', new Map([[vehicles, 'merged']]));
    expect(read(after, 'light', `${vehicles}/2/count`)).toBe(1);
  });

  it('cannot be merged into what comes from them', () => {
    const scene = family();
    expect(mergeTargets(scene, 'heavy')).toEqual([null]);
    expect(mergeTargets(scene, 'steep-too')).toEqual([null, 'heavy', 'thick-too']);
    expect(() => merged(scene, 'heavy', 'steep-too')).toThrow(RangeError);
  });
});
