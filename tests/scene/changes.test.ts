import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  changedScene,
  readAt,
  removeSupports,
  sceneChanges,
  sceneQuantities,
  variantScene,
  withAt,
} from '../../src/scene/index.ts';
import { bundledFiles, bundledScene, sampleScene, sampleWith, sceneOf } from './sample.ts';

describe('addresses', () => {
  it('name parts by id, by support and by number from 1', () => {
    const scene = sampleScene();
    expect(readAt(scene, 'tracks/line/alignment/first/radiusMm')).toBe(1000);
    expect(readAt(scene, 'tracks/1/alignment/2/radiusMm')).toBe(1000);
    expect(readAt(scene, 'tracks/line/profile/2/verticalCurveLengthMm')).toBe(400);
    expect(readAt(scene, 'tracks/line/supports/off/3/byMm')).toBe(1.5);
    expect(readAt(scene, 'tracks/line/supports/off/1/byMm')).toBeUndefined();
    expect(readAt(scene, 'tracks/line/__proto__')).toBeUndefined();
    expect(readAt(scene, 'tracks/other/alignment')).toBeUndefined();
  });

  it('set, add and take away, and leave the old scene alone', () => {
    const scene = sampleScene();
    const before = structuredClone(scene);
    expect(readAt(withAt(scene, 'stock/coach/massG', 150), 'stock/coach/massG')).toBe(150);
    expect(readAt(withAt(scene, 'stock/engine/drive/adhesion', 0.25), 'stock/engine/drive/adhesion')).toBe(0.25);
    expect(withAt(scene, 'tracks/line/supports/off/9/byMm', -2).tracks[0].supports).toEqual({
      everyMm: 300,
      off: [
        { support: 3, byMm: 1.5 },
        { support: 9, byMm: -2 },
      ],
    });
    expect(withAt(scene, 'tracks/line/stripJoints/1', undefined).tracks[0].stripJoints).toEqual([]);
    expect(withAt(scene, 'tracks/line/stripJoints', undefined).tracks[0]).not.toHaveProperty('stripJoints');
    expect(withAt(scene, 'trials/up/forces/curveFactor', 1.5).trials[0].forces).toEqual({ curveFactor: 1.5 });
    expect(scene).toEqual(before);
  });

  it('that lead nowhere are refused with what is there', () => {
    expect(() => withAt(sampleScene(), 'tracks/other/start/xMm', 1)).toThrow('there are line');
    expect(() => withAt(sampleScene(), 'trakcs/line/start/xMm', 1)).toThrow('"trakcs" leads nowhere');
    expect(() => withAt(sampleScene(), 'name/first', 1)).toThrow('"name" has no parts');
  });
});

describe('sceneChanges', () => {
  it('says the least that has to be said', () => {
    const before = sampleScene();
    const after = sceneOf(sampleWith('tracks.0.alignment.1.radiusMm', 900));
    expect(sceneChanges(before, after)).toEqual([{ at: 'tracks/line/alignment/first/radiusMm', to: 900 }]);
    expect(sceneChanges(after, after)).toEqual([]);
  });

  it('leads from any scene to any other, whatever has come, gone and moved', () => {
    const scenes = bundledFiles.map(bundledScene);
    const any = fc.constantFrom(...scenes);
    fc.assert(
      fc.property(any, any, (a, b) => {
        expect(changedScene(a, sceneChanges(a, b))).toEqual(b);
      }),
      { numRuns: scenes.length ** 2 },
    );
  });

  it('puts a list in the place of a record, and the record back', () => {
    // A row of supports that loses one becomes a list of its own.
    const row = sampleScene();
    const list = removeSupports(row, 'line', { from: 1, to: 1 });
    expect(Array.isArray(list.tracks[0].supports)).toBe(true);
    expect(sceneChanges(row, list).map(({ at }) => at)).toEqual(['tracks/line/supports']);
    expect(changedScene(row, sceneChanges(row, list))).toEqual(list);
    expect(changedScene(list, sceneChanges(list, row))).toEqual(row);
  });

  it('undoes every change of a number', () => {
    const scene = sampleScene();
    fc.assert(
      fc.property(fc.constantFrom(...sceneQuantities(scene)), ({ at, value }) => {
        const changed = withAt(scene, at, value + 1);
        expect(sceneChanges(scene, changed)).toEqual([{ at, to: value + 1 }]);
        expect(changedScene(changed, sceneChanges(changed, scene))).toEqual(scene);
      }),
    );
  });
});

describe('sceneQuantities', () => {
  it('finds numbers with their bounds, their meaning and what they belong to', () => {
    const found = sceneQuantities(sampleScene());
    const radius = found.find(({ at }) => at === 'tracks/line/alignment/first/radiusMm');
    expect(radius).toMatchObject({ value: 1000, of: ['Line', 'first'], whole: false, least: 0.01 });
    expect(radius?.about).toContain('centreline');
    expect(found.find(({ at }) => at === 'trains/train/vehicles/2/count')).toMatchObject({ value: 2, whole: true });
    expect(found.find(({ at }) => at.endsWith('off/3/byMm'))?.of).toEqual(['Line', 'support 3']);
  });

  it('gives addresses that lead to the very number, in every scene', () => {
    for (const scene of bundledFiles.map(bundledScene)) {
      const found = sceneQuantities(scene);
      expect(found.length).toBeGreaterThan(20);
      for (const { at, value, least, most } of found) {
        expect(readAt(scene, at)).toBe(value);
        expect(value).toBeGreaterThanOrEqual(least);
        expect(value).toBeLessThanOrEqual(most);
      }
    }
  });
});

describe('variantScene', () => {
  const changes = [{ at: 'tracks/line/alignment/first/radiusMm', to: 900 }];
  const variants = [
    { id: 'tight', name: 'Tighter', changes },
    { id: 'tight-and-heavy', name: 'Heavier', from: 'tight', changes: [{ at: 'stock/coach/massG', to: 150 }] },
    { id: 'lost', name: 'Lost', changes: [{ at: 'stock/waggon/massG', to: 150 }] },
    { id: 'flat', name: 'No radius', changes: [{ at: 'tracks/line/alignment/first/radiusMm', to: -5 }] },
  ];
  const scene = sceneOf(sampleWith('variants', variants));

  it('makes the changes of the variant and of those it comes from', () => {
    const made = variantScene(scene, 'tight-and-heavy');
    expect(made.ok && readAt(made.scene, 'tracks/line/alignment/first/radiusMm')).toBe(900);
    expect(made.ok && readAt(made.scene, 'stock/coach/massG')).toBe(150);
  });

  it('says what is wrong with one that leads nowhere or to what no file may hold', () => {
    expect(variantScene(scene, 'lost')).toMatchObject({ ok: false, problems: [{ path: 'variants "lost"' }] });
    expect(variantScene(scene, 'flat')).toMatchObject({ ok: false, problems: [{ found: '-5' }] });
    expect(variantScene(scene, 'none')).toMatchObject({ ok: false, problems: [{ found: 'no such variant' }] });
  });

  it('is refused in a file when it comes from itself or from nothing', () => {
    const round = [
      { id: 'a', name: 'A', from: 'b', changes: [] },
      { id: 'b', name: 'B', from: 'a', changes: [] },
    ];
    expect(() => sceneOf(sampleWith('variants', round))).toThrow('leads back to itself');
    expect(() => sceneOf(sampleWith('variants', [{ id: 'a', name: 'A', from: 'c', changes: [] }]))).toThrow(
      'variants[0]',
    );
  });
});
