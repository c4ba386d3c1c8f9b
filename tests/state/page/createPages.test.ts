import { describe, expect, it, vi } from 'vitest';
import { createInProcessHost } from '../../../src/sim/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { createPages } from '../../../src/state/page/index.ts';
import { heldHost, sceneForTests } from '../fakeHost.ts';

function desk() {
  const session = createSession(heldHost().host);
  void session.actions.openScene(sceneForTests());
  const saved: string[] = [];
  const pages = createPages(session, {
    solver: createInProcessHost,
    layOut: async ({ trials }, date) => `${date}: ${trials.length} trials`,
    output: {
      save: async (name, text, { mimeType }) => saved.push(`${name} ${mimeType} ${text}`) > 0,
      show: vi.fn(),
    },
    today: () => '1 May 2027',
  });
  pages.actions.setLoads(false);
  return { session, ...pages, saved };
}

describe('the page to pass on', () => {
  it('is made of the railway as it is and saved under its name', async () => {
    const { session, pages, actions, saved } = desk();
    const seen: (number | null)[] = [];
    pages.subscribe(({ progress }) => seen.push(progress));
    await actions.make();
    expect(pages.getState()).toMatchObject({ progress: null, problem: null, made: { whole: true } });
    expect(pages.getState().made?.scene).toBe(session.session.getState().scene);
    expect(seen.filter((one) => one !== null && one > 0).length).toBeGreaterThan(2);
    await actions.save();
    expect(saved).toEqual(['wren-gill-spiral.html text/html 1 May 2027: 4 trials']);
  });

  it('is not made when it is stopped, and can be made again', async () => {
    const { pages, actions } = desk();
    const work = actions.make();
    actions.stop();
    await work;
    expect(pages.getState()).toMatchObject({ progress: null, made: null, problem: null });
    await actions.make();
    expect(pages.getState().made).not.toBeNull();
  });

  it('is the one asked for last', async () => {
    const { pages, actions } = desk();
    await Promise.all([actions.make(), actions.make()]);
    expect(pages.getState()).toMatchObject({ progress: null, problem: null });
    expect(pages.getState().made).not.toBeNull();
  });
});
