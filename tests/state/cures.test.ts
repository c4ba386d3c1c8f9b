import { describe, expect, it } from 'vitest';
import type { Cure } from '../../src/core/findings/types.ts';
import { createSession, remainderWords } from '../../src/state/index.ts';
import { finding, heldHost, resultOf, sceneForTests, settle } from './fakeHost.ts';

const slower: Cure = { kind: 'setting', to: 0.3 };
const shorter: Cure = { kind: 'fewer-vehicles', by: 1 };

/** A session whose first trial fails and whose cures are waiting to be answered. */
async function failing() {
  const { host, asked } = heldHost();
  const made = createSession(host);
  const scene = sceneForTests();
  const trialId = scene.trials[0].id;
  const opening = made.actions.openScene(scene);
  const findings = [
    finding({ cures: [slower, shorter] }),
    finding({ risk: 'headroom', verdict: 'passes', margin: 0.02, cures: [shorter] }),
  ];
  await asked[0].answer(resultOf(trialId, findings));
  await opening;
  return { ...made, asked, scene, trialId, state: () => made.session.getState() };
}

describe('cures', () => {
  it('are worked out one after the other, for what does not pass only', async () => {
    const { asked, state, trialId } = await failing();
    expect([...state().cures.keys()]).toEqual([0]);
    expect(
      state()
        .cures.get(0)
        ?.map((outcome) => outcome.state),
    ).toEqual(['running', 'waiting']);
    expect(asked).toHaveLength(2);
    await asked[1].answer(resultOf(trialId, [], { override: 0.0002 }));
    expect(state().cures.get(0)?.[0]).toMatchObject({ state: 'done', margin: 0.0002 });
    expect(asked).toHaveLength(3);
    expect(asked[2].cure).toBe(shorter);
    await asked[2].answer(null);
    expect(state().cures.get(0)?.[1]).toMatchObject({ state: 'impossible', margin: null });
  });

  it('say where the trouble is that they leave', async () => {
    const { state, trialId } = await failing();
    const { risk } = state().result!.findings[0];
    const leaving = (...left: Parameters<typeof finding>[0][]) =>
      resultOf(
        trialId,
        left.map((one) => finding(one)),
      );
    const elsewhere = { risk, verdict: 'fails', margin: -0.0001, chainage: 4.5 } as const;
    const worst = { risk, verdict: 'fails', margin: -0.0002, chainage: 7.25 } as const;
    expect(remainderWords(state(), 0, leaving(elsewhere, worst))).toBe('Still fails at 7.25\u2009m');
    const unsure = { risk, verdict: 'near', margin: 0.0001, range: [-0.0001, 0.0003], chainage: 4.5 } as const;
    expect(remainderWords(state(), 0, leaving(unsure))).toBe('Still undecided at 4.50\u2009m');
    expect(remainderWords(state(), 0, leaving({ risk, verdict: 'near', margin: 0.0001, range: null }))).toBeNull();
    // What another check says is told apart from this.
    expect(remainderWords(state(), 0, leaving({ risk: 'headroom', verdict: 'fails', margin: -0.01 }))).toBeNull();
  });

  it('are shown as a ghost that changes nothing, and dropped', async () => {
    const { actions, asked, state, trialId, scene, history } = await failing();
    const cured = resultOf(trialId, [], { override: 0.0002 });
    await asked[1].answer(cured);
    await actions.tryCure(0, 0);
    expect(state().ghost).toMatchObject({ finding: 0, cure: 0, result: cured });
    expect(state().scene).toBe(scene);
    expect(history.getState().past).toHaveLength(0);
    actions.dropGhost();
    expect(state().ghost).toBeNull();
  });

  it('come first when they are tried before their turn', async () => {
    const { actions, asked, state, trialId } = await failing();
    const trying = actions.tryCure(0, 1);
    await settle();
    expect(asked[1].hooks.signal?.aborted).toBe(true);
    expect(asked[2].cure).toBe(shorter);
    const cured = resultOf(trialId, [], { override: 0.001 });
    await asked[2].answer(cured);
    await trying;
    expect(state().ghost).toMatchObject({ cure: 1, result: cured });
    // The one that was called off takes its turn again.
    expect(asked[3].cure).toBe(slower);
  });

  it('become part of the scene as one undo step when they are kept', async () => {
    const { actions, asked, state, trialId, scene, history } = await failing();
    const before = state().result;
    const cured = resultOf(trialId, [], { override: 0.0002 });
    await asked[1].answer(cured);
    await actions.tryCure(0, 0);
    actions.keepCure();
    expect(state()).toMatchObject({ ghost: null, result: cured });
    expect(state().scene?.trials[0].orders.some((order) => order.setting === 0.3)).toBe(true);
    expect(state().compiled?.scene).toBe(state().scene);
    expect(history.getState().past.map(({ label }) => label)).toEqual(['controller at 30\u2009%']);
    await actions.undo();
    expect(state()).toMatchObject({ scene, result: before });
  });

  it('stop when the person stops what is being worked out', async () => {
    const { actions, asked, state } = await failing();
    actions.cancel();
    await settle();
    expect(asked[1].hooks.signal?.aborted).toBe(true);
    expect(
      state()
        .cures.get(0)
        ?.map((outcome) => outcome.state),
    ).toEqual(['waiting', 'waiting']);
    expect(asked).toHaveLength(2);
  });

  it('are given up when another trial is run', async () => {
    const { actions, asked, state } = await failing();
    void actions.setSetting(0.2);
    await settle();
    expect(asked[1].hooks.signal?.aborted).toBe(true);
    expect(asked[2].cure).toBeNull();
    expect(state().ghost).toBeNull();
  });
});
