import { describe, expect, it, vi } from 'vitest';
import type { Scene } from '../../../src/scene/index.ts';
import type { Glance } from '../../../src/sim/glance/index.ts';
import type { ProbePool } from '../../../src/sim/study/index.ts';
import type { SimHost } from '../../../src/sim/types.ts';
import { createSession } from '../../../src/state/index.ts';
import { beforeWords, createRoute, noSnapping } from '../../../src/state/route/index.ts';
import { sample, sceneOf } from '../../scene/sample.ts';
import { resultOf } from '../fakeHost.ts';

const snap = { lengthMm: 10, angleDeg: 5, ends: 0.05 };

/** A session whose runs are done at once and counted, and whose quasi-static passes are answered one by one. */
async function opened(over: Partial<Record<string, unknown>> = {}) {
  const { startMm: _start, finishMm: _finish, ...freeTrial } = sample.trials[0];
  const scene = sceneOf({ ...sample, trials: [freeTrial], ...over });
  const ran: Scene[] = [];
  const host: SimHost = {
    async runTrial(ranScene, trialId) {
      ran.push(ranScene);
      return resultOf(trialId);
    },
    tryCure: async () => null,
    probe: () => Promise.reject(new Error('not here')),
    glance: () => Promise.reject(new Error('not here')),
    dispose: () => {},
  };
  const asked: { readonly scene: Scene; readonly thorough: boolean; answer(glance: Glance): Promise<void> }[] = [];
  const pool: Pick<ProbePool, 'glance'> = {
    glance: ({ scene, thorough }) =>
      new Promise((resolve) => {
        asked.push({
          scene,
          thorough,
          async answer(glance) {
            resolve(glance);
            await new Promise((done) => setTimeout(done, 0));
          },
        });
      }),
  };
  const session = createSession(host);
  const route = createRoute(session, pool);
  await session.actions.openScene(scene);
  const line = () => session.session.getState().scene?.tracks[0];
  const settled = () => new Promise((done) => setTimeout(done, 0));
  return { ...session, ...route, document: session.actions, scene, ran, asked, line, settled };
}

const measure = (margin: number): Glance => ({
  ok: true,
  measure: {
    trialId: 'up',
    outcome: 'arrived',
    passes: margin >= 0,
    risks: [{ risk: 'override', margin, unit: 'length', share: margin / 0.001, chainage: 2, subject: 1 }],
  },
});

describe('handles', () => {
  it('go from the start of the track to its end; a bend between straights has its corner too', async () => {
    const { plan } = await opened();
    expect(plan()?.handles.map(({ key }) => key)).toEqual([
      'heading',
      'start',
      'end:0',
      'radius:1',
      'end:1',
      'radius:2',
      'end:2',
      'end:3',
      'extend',
      // One of the supports is a stop of the Tab key, from which the arrow keys go on.
      'support:0',
    ]);
    const bent = await opened({
      tracks: [
        {
          ...sample.tracks[0],
          alignment: [
            { kind: 'straight', lengthMm: 2500 },
            { kind: 'arc', radiusMm: 600, turn: 'left', angleDeg: 90 },
            { kind: 'straight', lengthMm: 2500 },
          ],
        },
      ],
    });
    const corner = bent.plan()?.handles.find(({ kind }) => kind === 'corner');
    // Straights at a right angle meet a radius beyond the first.
    expect(corner?.place[0]).toBeCloseTo(3.1, 9);
    expect(corner?.place[1]).toBeCloseTo(0, 9);
  });
});

describe('a hold', () => {
  it('is one step of the history and one run, however far it goes', async () => {
    const { actions, line, ran, history, document, scene, settled, session } = await opened();
    expect(ran).toHaveLength(1);
    expect(actions.take('end:0')).toBe(true);
    for (const x of [2.013, 2.1, 2.304]) actions.moveTo([x, 0.2], snap);
    expect(line()?.alignment[0]).toMatchObject({ lengthMm: 2300 });
    await settled();
    // The hand still holds it: nothing is solved.
    expect(ran).toHaveLength(1);
    actions.letGo();
    await settled();
    expect(ran).toHaveLength(2);
    expect(history.getState().past.map(({ label }) => label)).toEqual(['end of lead']);
    await document.undo();
    expect(session.getState().scene).toBe(scene);
  });

  it('is put back as if it never was', async () => {
    const { actions, history, scene, session, ran, settled } = await opened();
    actions.take('start');
    actions.moveTo([0.5, 0.5], noSnapping);
    expect(session.getState().scene).not.toBe(scene);
    actions.putBack();
    await settled();
    expect(session.getState().scene).toBe(scene);
    expect(history.getState().past).toHaveLength(0);
    expect(ran).toHaveLength(1);
  });

  it('says what cannot be met, and keeps the last that could', async () => {
    const { actions, line, route } = await opened();
    actions.take('end:0');
    actions.moveTo([1.5, 0], snap);
    actions.moveTo([-1, 0], snap);
    expect(route.getState().refusal).toMatch(/lead needs a length of more than 0/);
    expect(line()?.alignment[0]).toMatchObject({ lengthMm: 1500 });
    actions.moveTo([1.6, 0], snap);
    expect(route.getState().refusal).toBeNull();
    actions.letGo();
  });

  it.each([
    ['start', [0.123, -0.456], { start: { xMm: 120, yMm: -460, headingDeg: 0 } }],
    // The handle lies behind the start: up on the left means running down to the right.
    ['heading', [-1, 0.27], { start: { xMm: 0, yMm: 0, headingDeg: -15 } }],
    ['extend', [7.4, 1.2], null],
  ] as const)('of %s comes to round numbers', async (key, place, expected) => {
    const { actions, line, route } = await opened();
    actions.take(key);
    actions.moveTo(place, snap);
    expect(route.getState().refusal).toBeNull();
    if (expected) expect(line()).toMatchObject(expected);
    actions.letGo();
  });

  it('of the end of a curve turns it to where it is seen from its centre, in steps of 5 degrees', async () => {
    const { actions, line } = await opened();
    actions.take('end:1');
    // Centre at 2 m, 1 m; a quarter turn on the curve stands at 3 m, 1 m.
    actions.moveTo([3.2, 1.1], snap);
    expect(line()?.alignment[1]).toMatchObject({ angleDeg: 95 });
    actions.moveTo([3.2, 1.0], noSnapping);
    const curve = line()?.alignment[1];
    expect(curve?.kind === 'arc' && curve.angleDeg).toBeCloseTo(90, 6);
    actions.letGo();
  });

  it('of the radius of a free curve makes it pass the hand', async () => {
    const { actions, line } = await opened();
    actions.take('radius:1');
    // A circle from 2 m, 0 that runs east passes 2.8 m, 0.8 m when its radius is 800 mm.
    actions.moveTo([2.8, 0.8], snap);
    expect(line()?.alignment[1]).toMatchObject({ radiusMm: 800, turn: 'left' });
    actions.letGo();
  });

  it('of new track near the end of another joins it, in its direction', async () => {
    const other = {
      ...sample.tracks[0],
      id: 'other',
      name: 'Other',
      start: { xMm: 9000, yMm: 3000, headingDeg: 90 },
      alignment: [{ kind: 'straight', lengthMm: 3000 }],
      profile: [{ atMm: 0, heightMm: 0 }],
      supports: { everyMm: 300 },
      stripJoints: [],
    };
    const { actions, plan } = await opened({ tracks: [sample.tracks[0], other] });
    actions.take('extend');
    actions.moveTo([9.02, 2.98], snap);
    const end = plan();
    expect(end?.handles.find(({ kind }) => kind === 'extend')?.anchor[0]).toBeCloseTo(9, 6);
    expect(end?.handles.find(({ kind }) => kind === 'extend')?.anchor[1]).toBeCloseTo(3, 6);
    actions.letGo();
  });
});

describe('the verdict while the hand moves', () => {
  it('asks for one pass at a time and then for the newest railway only', async () => {
    const { actions, asked, route, line } = await opened();
    actions.take('end:0');
    for (const x of [2.1, 2.2, 2.3]) actions.moveTo([x, 0], snap);
    expect(asked).toHaveLength(1);
    await asked[0].answer(measure(0.0005));
    const first = route.getState().verdict;
    expect(first?.ok && first.measure.risks[0].margin).toBe(0.0005);
    expect(asked).toHaveLength(2);
    expect(asked[1].scene.tracks[0]).toBe(line());
    await asked[1].answer(measure(-0.0002));
    expect(route.getState().verdict).toMatchObject({ ok: true, measure: { passes: false } });
  });

  it('compares with the railway before the change, seen the same way, once', async () => {
    const { actions, asked, route, session } = await opened();
    const before = session.getState().compiled?.scene;
    actions.take('end:0');
    actions.moveTo([2.1, 0], snap);
    await asked[0].answer(measure(-0.0002));
    expect(asked).toHaveLength(2);
    expect(asked[1].scene).toBe(before);
    await asked[1].answer(measure(0.0005));
    expect(route.getState().before?.risks[0].margin).toBe(0.0005);
    const { verdict } = route.getState();
    const show = { lengthUnit: 'mm', gradeForm: 'one-in' } as const;
    expect(verdict && beforeWords(verdict, route.getState().before, show)).toMatch(/^before: passes; closest: /);
    actions.moveTo([2.2, 0], snap);
    await asked[2].answer(measure(0.0001));
    expect(asked).toHaveLength(3);
    actions.putBack();
    expect(route.getState().before).toBeNull();
  });

  it('looks at both thoroughly once the hand rests, and shows them together', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    try {
      const answer = async (index: number, margin: number) => {
        void asked[index].answer(measure(margin));
        await vi.advanceTimersByTimeAsync(0);
      };
      const opening = opened();
      await vi.advanceTimersByTimeAsync(0);
      const { actions, asked, route, session } = await opening;
      actions.take('end:0');
      actions.moveTo([2.1, 0], snap);
      await answer(0, 0.0002);
      await answer(1, 0.0005);
      expect(asked.map(({ thorough }) => thorough)).toEqual([false, false]);
      await vi.advanceTimersByTimeAsync(1000);
      expect(asked[2]).toMatchObject({ scene: session.getState().compiled?.scene, thorough: true });
      await answer(2, 0.0004);
      expect(route.getState().before?.risks[0].margin).toBe(0.0005);
      expect(asked[3]).toMatchObject({ scene: session.getState().scene, thorough: true });
      await answer(3, 0.0001);
      expect(route.getState()).toMatchObject({
        verdict: { ok: true, measure: { risks: [{ margin: 0.0001 }] } },
        before: { risks: [{ margin: 0.0004 }] },
      });
      await vi.advanceTimersByTimeAsync(1000);
      expect(asked).toHaveLength(4);
      actions.moveTo([2.3, 0], snap);
      expect(asked[4]).toMatchObject({ scene: session.getState().scene, thorough: false });
    } finally {
      vi.useRealTimers();
    }
  });

  it('looks at what is on show as soon as the route is opened, so that the first move finds its answerer awake', async () => {
    const { document, asked, route, session } = await opened();
    // Beside the first run of a railway nothing else was worked out.
    expect(asked).toHaveLength(0);
    document.setChapter('route');
    expect(asked[0]).toMatchObject({ scene: session.getState().scene, thorough: false });
    await asked[0].answer(measure(0.0003));
    expect(asked).toHaveLength(1);
    expect(route.getState().verdict).toBeNull();
  });

  it('gives way to the trial when that is solved, and tells why a railway cannot be run', async () => {
    const { actions, asked, route, settled } = await opened();
    actions.take('end:0');
    actions.moveTo([2.1, 0], snap);
    await asked[0].answer({ ok: false, reason: 'It cannot be laid.' });
    expect(route.getState().verdict).toMatchObject({ ok: false, reason: 'It cannot be laid.' });
    actions.letGo();
    await settled();
    expect(route.getState().verdict).toBeNull();
  });
});
