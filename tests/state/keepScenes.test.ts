import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  createSession,
  type KeepPort,
  type KeptScene,
  keepScenes,
  openKept,
  type RailwayFile,
  renameKept,
} from '../../src/state/index.ts';
import { heldHost, resultOf, sceneForTests } from './fakeHost.ts';

/** A machine that keeps what it is given, unless it is full. */
function machine(full = false, taken = false) {
  let scenes: KeptScene[] = [];
  let last: string | null = null;
  const files = new Map<string, RailwayFile | null>();
  const port: KeepPort = {
    list: () => scenes,
    async keep(scene) {
      if (full) return 'full';
      scenes = [scene, ...scenes.filter(({ id }) => id !== scene.id)];
      return 'kept';
    },
    versions: async (id) => scenes.filter((scene) => scene.id === id),
    async forget(id) {
      scenes = scenes.filter((scene) => scene.id !== id);
    },
    claim: async () => !taken,
    file: async (id) => files.get(id) ?? null,
    async setFile(id, file) {
      files.set(id, file);
    },
    last: () => last,
    setLast(id) {
      last = id;
    },
  };
  return port;
}

const scene = sceneForTests();

function opened(port: KeepPort) {
  const { host, asked } = heldHost();
  const session = createSession(host);
  const keeper = keepScenes(session, port, () => 5000);
  void session.actions.openScene(scene);
  return { session, keeper, asked };
}

describe('keeping scenes on the machine', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  it('leaves an example alone that was not changed', () => {
    const port = machine();
    const { session } = opened(port);
    vi.runAllTimers();
    expect(port.list()).toEqual([]);
    expect(session.session.getState().savedAt).toBeNull();
  });

  it('keeps a change once it rests, and says when', async () => {
    const port = machine();
    const { session } = opened(port);
    for (const setting of [0.2, 0.3, 0.4]) void session.actions.setSetting(setting);
    expect(port.list()).toEqual([]);
    await vi.runAllTimersAsync();
    expect(port.list()).toMatchObject([{ name: scene.name, trialId: scene.trials[0].id, at: 5000 }]);
    expect(port.last()).toBe(port.list()[0].id);
    expect(session.session.getState().savedAt).toBe(5000);
  });

  it('keeps at once when the page goes away', () => {
    const port = machine();
    const { session, keeper } = opened(port);
    void session.actions.setSetting(0.2);
    keeper.flush();
    expect(port.list()).toHaveLength(1);
  });

  it('does not claim to have saved where there is no room', async () => {
    const port = machine(true);
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    await vi.runAllTimersAsync();
    expect(session.session.getState().savedAt).toBeNull();
    expect(session.session.getState().notKept).toBe('full');
    expect(port.last()).toBeNull();
  });

  it('gives back what was kept where it was left', async () => {
    const port = machine();
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    const changed = session.session.getState().scene;
    await vi.runAllTimersAsync();
    const { host, asked } = heldHost();
    const again = createSession(host);
    vi.useRealTimers();
    const opening = openKept(again, port.list()[0], port);
    await Promise.resolve();
    await Promise.resolve();
    await asked[0].answer(resultOf(scene.trials[0].id));
    expect(await opening).toBe(true);
    expect(again.session.getState().scene).toEqual(changed);
    expect(again.session.getState().opened).toEqual({ from: 'machine', name: scene.name, id: port.list()[0].id });
  });

  it('keeps nothing anew of what was only opened again, and goes on with it', async () => {
    const port = machine();
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    await vi.runAllTimersAsync();
    const [kept] = port.list();
    void session.actions.openScene({ ...scene, name: 'Another' });
    await vi.runAllTimersAsync();
    expect(port.last()).toBeNull();
    const keep = vi.spyOn(port, 'keep');
    void openKept(session, kept, port);
    await vi.runAllTimersAsync();
    expect(keep).not.toHaveBeenCalled();
    expect(port.last()).toBe(kept.id);
    void session.actions.setSetting(0.3);
    await vi.runAllTimersAsync();
    expect(keep).toHaveBeenCalledOnce();
    expect(port.list()).toHaveLength(1);
    // An earlier state that is opened is the newest from then on.
    void openKept(session, kept, port);
    await vi.runAllTimersAsync();
    expect(port.list()[0].text).toBe(kept.text);
  });

  it('holds an example for its own window from the first', async () => {
    const port = machine();
    const claim = vi.spyOn(port, 'claim');
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    await vi.runAllTimersAsync();
    expect(claim.mock.calls).toEqual([[port.list()[0].id]]);
  });

  it('keeps within a second while the hand never rests', async () => {
    const port = machine();
    const { session } = opened(port);
    for (let k = 1; k <= 10; k++) {
      void session.actions.setSetting(k / 20);
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(port.list()).toHaveLength(1);
  });

  it('keeps what was open when another railway is opened at once', async () => {
    const port = machine();
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    const changed = session.session.getState().scene;
    void session.actions.openScene({ ...scene, name: 'Another' });
    await vi.runAllTimersAsync();
    expect(port.list().map(({ text }) => JSON.parse(text))).toEqual([changed]);
    expect(port.last()).toBeNull();
  });

  it('opens a copy of what another window has, and never writes over it', async () => {
    vi.useRealTimers();
    const port = machine(false, true);
    const kept = { id: 'a', name: scene.name, trialId: scene.trials[0].id, text: JSON.stringify(scene), at: 1 };
    await port.keep(kept);
    const { host } = heldHost();
    const session = createSession(host);
    const keeper = keepScenes(session, port, () => 5000);
    void openKept(session, kept, port);
    await vi.waitFor(() => expect(session.session.getState().opened?.from).toBe('copy'));
    void session.actions.setSetting(0.2);
    keeper.flush();
    await vi.waitFor(() => expect(port.list()).toHaveLength(2));
    expect(port.list().find(({ id }) => id === 'a')).toEqual(kept);
    expect(session.session.getState().scene?.name).toBe(`${scene.name}, copy`);
  });

  it('does not open what can no longer be read', async () => {
    const { host } = heldHost();
    const session = createSession(host);
    const kept = { id: 'a', name: 'A', trialId: 'a', text: '{}', at: 0 };
    expect(await openKept(session, kept, machine())).toBe(false);
    expect(session.session.getState().scene).toBeNull();
  });

  it('comes back with the file it is written to', async () => {
    const port = machine();
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    session.session.setState({ file: { name: 'gill.json', handle: {} } });
    await vi.runAllTimersAsync();
    const [kept] = port.list();
    const { session: next } = opened(port);
    void openKept(next, kept, port);
    await vi.runAllTimersAsync();
    expect(next.session.getState().file?.name).toBe('gill.json');
  });

  it('renames a railway that is not open as its newest state', async () => {
    const port = machine();
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    await vi.runAllTimersAsync();
    expect(await renameKept(port.list()[0], ' Fern Gill ', port, 9000)).toBe('kept');
    expect(port.list()).toMatchObject([{ name: 'Fern Gill', at: 9000 }]);
    expect(JSON.parse(port.list()[0].text).name).toBe('Fern Gill');
    await expect(renameKept(port.list()[0], '  ', port, 9001)).rejects.toThrow('needs a name');
    expect(await renameKept(port.list()[0], 'Moss Gill', machine(true), 9002)).toBe('full');
  });
});
