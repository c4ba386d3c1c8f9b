import fc from 'fast-check';
import { expect, it } from 'vitest';
import { serialiseScene } from '../../src/scene/index.ts';
import { createSession } from '../../src/state/index.ts';
import { anyDraw, edited } from '../scene/edits/everyEdit.ts';
import { bundledFiles, bundledScene } from '../scene/sample.ts';
import { heldHost } from './fakeHost.ts';

/** Nothing is waited for: a run is begun after each edit and called off by the next. */
it('any edits, one after the other, are undone to the same file byte for byte, and done again', () => {
  const scenes = bundledFiles.map(bundledScene);
  let steps = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...scenes.keys()),
      fc.array(anyDraw(), { minLength: 1, maxLength: 6 }),
      (which, draws) => {
        const { session, actions } = createSession(heldHost().host);
        const text = (): string => serialiseScene(session.getState().scene ?? scenes[which]);
        void actions.openScene(scenes[which]);
        const texts = [text()];
        for (const draw of draws) {
          const before = session.getState().scene;
          void actions.change(draw.edit, (scene) => edited(scene, draw) ?? scene);
          if (session.getState().scene !== before) texts.push(text());
        }
        steps += texts.length - 1;
        for (const wanted of texts.slice(0, -1).toReversed()) {
          void actions.undo();
          expect(text()).toBe(wanted);
        }
        void actions.undo();
        expect(text()).toBe(texts[0]);
        for (const wanted of texts.slice(1)) {
          void actions.redo();
          expect(text()).toBe(wanted);
        }
      },
    ),
    { numRuns: 40 },
  );
  expect(steps).toBeGreaterThan(40);
});
