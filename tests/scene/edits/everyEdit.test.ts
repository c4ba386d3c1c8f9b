import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as edits from '../../../src/scene/edits/index.ts';
import { changedScene, parseScene, type Scene, sceneChanges, serialiseScene } from '../../../src/scene/index.ts';
import { bundledFiles, bundledScene, riskFiles, riskScene } from '../sample.ts';
import { anyDraw, edited, editNames, noEdits, saidByAPerson } from './everyEdit.ts';

const scenes = [...bundledFiles.map(bundledScene), ...riskFiles.map(riskScene)];
const anyScene = fc.constantFrom(...scenes.keys()).map((index) => scenes[index]);

/** A scene as its file says it, through the reader; null where the reader says in words that it cannot be. */
function reread(scene: Scene): Scene | null {
  const parsed = parseScene(serialiseScene(scene));
  if (parsed.ok) return parsed.scene;
  for (const { path, found, allowed } of parsed.problems) expect([path, found, allowed]).not.toContain('');
  return null;
}

it('every edit of the room is tried', () => {
  expect([...editNames, ...noEdits].sort()).toEqual(Object.keys(edits).sort());
});

describe.each(editNames)('%s, on any scene that comes with the program', (name) => {
  let made = 0;

  it('refuses in words, or makes a sound scene that its file gives back; and leaves the old one alone', () => {
    fc.assert(
      fc.property(anyScene, anyDraw(fc.constant(name)), (scene, draw) => {
        const before = serialiseScene(scene);
        const after = edited(scene, draw);
        expect(serialiseScene(scene)).toBe(before);
        if (after === null) return;
        const again = reread(after);
        if (again === null) {
          expect(saidByAPerson).toContain(name);
          return;
        }
        made++;
        expect(again).toEqual(after);
        expect(reread(again)).toEqual(again);
        expect(serialiseScene(reread(again) ?? scene)).toBe(serialiseScene(again));
        // What it changed, told as changes, leads there and back.
        expect(changedScene(scene, sceneChanges(scene, after))).toEqual(after);
        expect(changedScene(after, sceneChanges(after, scene))).toEqual(scene);
      }),
    );
    // Not all refused, or nothing was tried.
    expect(made).toBeGreaterThan(0);
  });
});
