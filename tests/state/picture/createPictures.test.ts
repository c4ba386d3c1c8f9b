import { describe, expect, it } from 'vitest';
import { createSession } from '../../../src/state/index.ts';
import { type Caption, captionOf, createPictures } from '../../../src/state/picture/index.ts';
import { finding, heldHost, resultOf, sceneForTests } from '../fakeHost.ts';

async function desk(findings = [finding({ chainage: 2 })]) {
  const { host, asked } = heldHost();
  const session = createSession(host);
  const scene = sceneForTests();
  const opening = session.actions.openScene(scene);
  await asked[0].answer(resultOf(scene.trials[0].id, findings));
  await opening;
  const captions: Caption[] = [];
  const saved: string[] = [];
  const pictures = createPictures(session, {
    captioned: async (picture, caption) => {
      captions.push(caption);
      return picture;
    },
    save: async (name) => saved.push(name) > 0,
  });
  return { ...session, ...pictures, captions, saved };
}

describe('a picture of the stage', () => {
  it('says the railway, the trial at its moment, and what comes of it', async () => {
    const { session, playback, actions, drawnBy, captions, saved } = await desk();
    const scales: number[] = [];
    drawnBy(async (scale) => {
      scales.push(scale);
      return new Blob();
    });
    playback.setState({ time: 4.04 });
    await actions.save(2);
    expect(scales).toEqual([2]);
    expect(saved).toEqual(['wren-gill-spiral.png']);
    expect(captions[0].title).toMatch(/^Wren Gill Spiral: Pick-up goods, propelled down, 4\.0.s$/);
    expect(captions[0].words).toMatch(/^Joint \d+ rides up at 2\.00.m.*\. Margin −0\.4.mm: fails\.$/);
    // Before there is a result there is nothing to say of it.
    expect(captionOf({ ...session.getState(), result: null }, 0).words).toBe('');
  });

  it('tells the finding that is chosen, and that a trial passes', async () => {
    const second = finding({ risk: 'headroom', verdict: 'near', margin: 0.001, chainage: 3, subject: 0 });
    const { session } = await desk([finding(), second]);
    expect(captionOf({ ...session.getState(), chosenFinding: 1 }, 0).words).toContain('Margin 1.0');
    const good = await desk([{ ...second, verdict: 'passes', margin: 0.02 }]);
    expect(captionOf(good.session.getState(), 0).words).toMatch(/^Passes\. Closest call: /);
  });

  it('is not taken while there is no stage, and says why one could not be', async () => {
    const { pictures, actions, drawnBy, saved } = await desk();
    await actions.save(1);
    const undrawn = drawnBy(async () => {
      throw new Error('The picture is too large for this machine.');
    });
    await actions.save(4);
    expect(pictures.getState().problem).toBe('The picture is too large for this machine.');
    undrawn();
    await actions.save(1);
    expect(saved).toEqual([]);
  });
});
