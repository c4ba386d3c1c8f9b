import { describe, expect, it, vi } from 'vitest';
import { inPage, parseScene, serialiseScene } from '../../src/scene/index.ts';
import { commandsWith, openFile, saveElsewhere, saveFile, undo } from '../../src/state/commands/index.ts';
import { createSession, type RailwayFile } from '../../src/state/index.ts';
import { heldHost, resultOf, sceneForTests } from './fakeHost.ts';

const commands = commandsWith([
  { id: 'route', label: 'Route' },
  { id: 'trial', label: 'Trial' },
]);

type Picked = RailwayFile & { readonly text: string };

async function desk() {
  const { host, asked } = heldHost();
  const made = createSession(host);
  const files = {
    pick: vi.fn(async () => null as Picked | null),
    save: vi.fn(
      async (name: string, _text: string, file: RailwayFile | null) => file ?? { name, handle: null as object | null },
    ),
  };
  const scene = sceneForTests();
  const opening = made.actions.openScene(scene);
  await asked[0].answer(resultOf(scene.trials[0].id));
  await opening;
  return { ...made, files, scene };
}

describe('commands', () => {
  it('have names and keys of their own', () => {
    const ids = commands.map((command) => command.id);
    const keys = commands.flatMap((command) => (command.key ? [command.key.toLowerCase()] : []));
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('all have words, whatever is open', async () => {
    const context = await desk();
    for (const command of commands) expect(command.label(context)).toMatch(/^[A-Z]/);
  });

  it('leave the arrows and the keys of a lecturer’s pointer alone but before an audience', async () => {
    const context = await desk();
    const { actions, session } = context;
    const named = (id: string) => commands.find((command) => command.id === id) ?? expect.unreachable(id);
    const next = named('tour-next');
    const back = named('step-back');
    expect(next.canRun(context)).toBe(false);
    expect(back.canRun(context)).toBe(false);
    void named('tour-present').run(context);
    expect(next.canRun(context)).toBe(true);
    void next.run(context);
    expect(session.getState().tour.stop).toBe(context.scene.tour?.[1].id);
    expect(back.label(context)).toBe('Leave the presentation');
    void back.run(context);
    expect(session.getState().tour.presenting).toBe(false);
    expect(next.canRun(context)).toBe(false);
    // Space plays what the stop is about before an audience, and the trial as a whole otherwise.
    actions.present();
    actions.runTour();
    void named('toggle-play').run(context);
    expect(session.getState().tour.running).toBe(false);
  });

  it('name what is undone, and cannot undo what was not done', async () => {
    const context = await desk();
    expect(undo.canRun(context)).toBe(false);
    void context.actions.setSetting(0.2);
    expect(undo.canRun(context)).toBe(true);
    expect(undo.label(context)).toBe('Undo setting to 20\u2009%');
  });

  it('save what can be opened again', async () => {
    const context = await desk();
    await saveFile.run(context);
    const [name, text] = context.files.save.mock.calls[0] as unknown as [string, string];
    expect(name).toMatch(/^[a-z0-9-]+\.json$/);
    expect(parseScene(text)).toEqual({ ok: true, scene: context.scene });
  });

  it('write again into the file that was opened, and elsewhere when asked', async () => {
    const context = await desk();
    const handle = {};
    const { scene } = context;
    context.files.pick.mockResolvedValueOnce({ name: 'gill.json', handle, text: serialiseScene(scene) });
    void openFile.run(context);
    await vi.waitFor(() => expect(context.session.getState().file).toEqual({ name: 'gill.json', handle }));
    expect(saveFile.label(context)).toBe('Save to “gill.json”');
    await saveFile.run(context);
    expect(context.files.save.mock.calls[0]?.[2]).toEqual({ name: 'gill.json', handle });
    await saveElsewhere.run(context);
    expect(context.files.save.mock.calls[1]?.[2]).toBeNull();
    void context.actions.openScene(scene);
    expect(context.session.getState().file).toBeNull();
    expect(saveElsewhere.canRun(context)).toBe(false);
  });

  it('open a page that the railway stands in, and never write over it', async () => {
    const context = await desk();
    const scene = { ...context.scene, name: 'Of a page' };
    const text = `<!doctype html>\n${inPage(serialiseScene(scene))}`;
    context.files.pick.mockResolvedValueOnce({ name: 'gill.html', handle: {}, text });
    void openFile.run(context);
    await vi.waitFor(() => expect(context.session.getState().scene?.name).toBe('Of a page'));
    expect(context.session.getState().file).toBeNull();
    await saveFile.run(context);
    const [name, , into] = context.files.save.mock.calls[0] as unknown as [string, string, unknown];
    expect([name, into]).toEqual(['of-a-page.json', null]);
  });

  it('say why a file could not be read', async () => {
    const context = await desk();
    context.files.pick.mockRejectedValueOnce(new Error('The disk is gone'));
    await openFile.run(context);
    expect(context.session.getState().problem?.lines).toEqual(['The disk is gone']);
    expect(context.session.getState().scene).toBe(context.scene);
  });
});
