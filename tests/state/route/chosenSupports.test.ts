import { describe, expect, it } from 'vitest';
import { placedSupports } from '../../../src/scene/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { chosenSpan, createRoute, spanWords, upTo } from '../../../src/state/route/index.ts';
import { evenSupports, moveSupports, removeSupports } from '../../../src/state/routeEdits/index.ts';
import { sampleScene } from '../../scene/sample.ts';
import { resultOf } from '../fakeHost.ts';

async function opened() {
  const session = createSession({
    runTrial: async (_scene, trialId) => resultOf(trialId),
    tryCure: async () => null,
    probe: () => Promise.reject(new Error('not here')),
    glance: () => Promise.reject(new Error('not here')),
    dispose: () => {},
  });
  const route = createRoute(session, { glance: () => new Promise(() => {}) });
  await session.actions.openScene(sampleScene());
  const line = () => {
    const track = session.session.getState().scene?.tracks[0];
    if (!track) throw new Error('no track');
    return track;
  };
  return { ...session, route, line, offs: () => placedSupports(line()).map(({ offMm }) => offMm) };
}

describe('chosen supports', () => {
  it('go from where the choice began to the last one, either way', async () => {
    const { line } = await opened();
    const first = upTo(null, line(), 7, 4);
    expect(chosenSpan(first, line())).toEqual({ from: 4, to: 7 });
    expect(chosenSpan(upTo(first, line(), 0, 9), line())).toEqual({ from: 7, to: 9 });
    expect(spanWords({ from: 4, to: 7 })).toBe('supports 5 to 8');
    expect(chosenSpan({ ...first, trackId: 'other' }, line())).toBeNull();
    expect(chosenSpan({ ...first, head: 21 }, line())).toBeNull();
  });

  it('are let go of where a handle or another track is chosen', async () => {
    const { route, line } = await opened();
    const chosen = () => route.route.getState().chosenSupports;
    route.actions.chooseSupports(upTo(null, line(), 2, 4));
    route.actions.chooseHandle('point:1');
    expect(chosen()).toBeNull();
    route.actions.chooseSupports(upTo(null, line(), 2, 4));
    route.actions.chooseTrack('line');
    expect(chosen()).toBeNull();
  });

  it('are changed together in one step of the history', async () => {
    const { actions, offs, line } = await opened();
    const before = offs();
    const span = { from: 2, to: 6 };
    const edits = [
      () => actions.attempt('even grade', (scene) => evenSupports(scene, 'line', span, () => 0)),
      () => actions.attempt('heights', (scene) => moveSupports(scene, 'line', span, 1)),
      () => actions.attempt('taken out', (scene) => removeSupports(scene, 'line', span)),
    ];
    for (const edit of edits) {
      expect(edit()).toBeNull();
      expect(offs()).not.toEqual(before);
      await actions.undo();
      expect(offs()).toEqual(before);
    }
    // A pull of many small moves is one step too.
    actions.beginGesture();
    for (let k = 1; k <= 5; k++) actions.attempt('heights', (scene) => moveSupports(scene, 'line', span, 0.1));
    actions.settleGesture();
    expect(placedSupports(line())[6].offMm).toBeCloseTo(0.5, 9);
    await actions.undo();
    expect(offs()).toEqual(before);
  });

  it('refuse a height out of the bounds in words, and stay', async () => {
    const { actions, offs } = await opened();
    const before = offs();
    expect(actions.attempt('heights', (scene) => moveSupports(scene, 'line', { from: 2, to: 6 }, 99))).toMatch(/100/);
    expect(offs()).toEqual(before);
  });
});

describe('a support on the stage', () => {
  it('is chosen, taken in up to, and raised with all that are chosen, in steps, as one step of the history', async () => {
    const { route, offs, actions, history } = await opened();
    const before = offs();
    const { chooseSupport, take, raise, letGo, putBack } = route.actions;
    chooseSupport(4, false);
    chooseSupport(6, true);
    expect(route.route.getState().chosenSupports).toMatchObject({ anchor: 4, head: 6 });
    expect(route.plan()?.handles.some(({ key }) => key === 'support:6')).toBe(true);
    expect(route.plan()?.posts).toHaveLength(3);
    expect(take('support:6')).toBe(true);
    raise(0.74, true);
    raise(1.26, true);
    expect(offs().slice(4, 7)).toEqual([1.3, 1.3, 1.3].map((mm) => expect.closeTo(mm, 9)));
    letGo();
    expect(history.getState().past.map(({ label }) => label)).toEqual(['heights of supports 5 to 7']);
    await actions.undo();
    expect(offs()).toEqual(before);
    take('support:6');
    raise(3, true);
    putBack();
    expect(offs()).toEqual(before);
  });

  it('that is not among the chosen goes alone; back where it was it is no step', async () => {
    const { route, offs, history } = await opened();
    const before = offs();
    route.actions.chooseSupport(4, false);
    route.actions.offerSupport(8);
    route.actions.take('support:8');
    expect(route.route.getState().chosenSupports).toMatchObject({ anchor: 8, head: 8 });
    route.actions.raise(2, true);
    route.actions.raise(0, true);
    route.actions.letGo();
    expect(offs()).toEqual(before);
    expect(history.getState().past).toEqual([]);
  });

  it('is gone on from by the keys, as far as there are any', async () => {
    const { route } = await opened();
    route.actions.goOn(-1, false);
    expect(route.route.getState().atSupport).toBe(0);
    route.actions.goOn(1, true);
    route.actions.goOn(1, true);
    expect(route.route.getState()).toMatchObject({ atSupport: 2, chosenSupports: { anchor: 0, head: 2 } });
  });
});
