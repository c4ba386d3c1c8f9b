import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createSession, type KeepPort, type KeptScene, keepScenes, openKept } from '../../src/state/index.ts';
import { heldHost, resultOf, sceneForTests } from './fakeHost.ts';

/** A machine that keeps what it is given, unless it is full. */
function machine(full = false) {
  let scenes: KeptScene[] = [];
  let last: string | null = null;
  const port: KeepPort = {
    list: () => scenes,
    keep(scene) {
      if (full) return false;
      scenes = [scene, ...scenes.filter(({ name }) => name !== scene.name)];
      return true;
    },
    forget(name) {
      scenes = scenes.filter((scene) => scene.name !== name);
    },
    last: () => last,
    setLast(name) {
      last = name;
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

  it('keeps a change once it rests, and says when', () => {
    const port = machine();
    const { session } = opened(port);
    for (const setting of [0.2, 0.3, 0.4]) void session.actions.setSetting(setting);
    expect(port.list()).toEqual([]);
    vi.runAllTimers();
    expect(port.list()).toMatchObject([{ name: scene.name, trialId: scene.trials[0].id, at: 5000 }]);
    expect(port.last()).toBe(scene.name);
    expect(session.session.getState().savedAt).toBe(5000);
  });

  it('keeps at once when the page goes away', () => {
    const port = machine();
    const { session, keeper } = opened(port);
    void session.actions.setSetting(0.2);
    keeper.flush();
    expect(port.list()).toHaveLength(1);
  });

  it('does not claim to have saved where there is no room', () => {
    const port = machine(true);
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    vi.runAllTimers();
    expect(session.session.getState().savedAt).toBeNull();
    expect(port.last()).toBeNull();
  });

  it('gives back what was kept where it was left', async () => {
    const port = machine();
    const { session } = opened(port);
    void session.actions.setSetting(0.2);
    const changed = session.session.getState().scene;
    vi.runAllTimers();
    const { host, asked } = heldHost();
    const again = createSession(host);
    vi.useRealTimers();
    const opening = openKept(again, port.list()[0]);
    await asked[0].answer(resultOf(scene.trials[0].id));
    expect(await opening).toBe(true);
    expect(again.session.getState().scene).toEqual(changed);
    expect(again.session.getState().opened).toEqual({ from: 'machine', name: scene.name });
  });

  it('does not open what can no longer be read', async () => {
    const { host } = heldHost();
    const session = createSession(host);
    const kept = { name: 'A', trialId: 'a', text: '{}', at: 0 };
    expect(await openKept(session, kept)).toBe(false);
    expect(session.session.getState().scene).toBeNull();
  });
});
