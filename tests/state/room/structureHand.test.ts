import { describe, expect, it } from 'vitest';
import { createSession } from '../../../src/state/index.ts';
import { roomRemarks } from '../../../src/state/room/index.ts';
import { createRoute, planWords } from '../../../src/state/route/index.ts';
import { sample, sceneOf } from '../../scene/sample.ts';
import { resultOf } from '../fakeHost.ts';

const snap = { lengthMm: 10, angleDeg: 5, ends: 0.05 };
const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

const rectangle = (xMm: number, yMm: number, lengthMm: number, widthMm: number) => [
  { xMm, yMm },
  { xMm: xMm + lengthMm, yMm },
  { xMm: xMm + lengthMm, yMm: yMm + widthMm },
  { xMm, yMm: yMm + widthMm },
];

/** A deck of 100 by 60 mm and a pier with three corners, and no room at all. */
const structures = [
  { name: 'Deck', outline: rectangle(5000, 4000, 100, 60), bottomMm: 80, topMm: 95 },
  {
    name: 'Pier',
    outline: [
      { xMm: 6000, yMm: 4000 },
      { xMm: 6060, yMm: 4000 },
      { xMm: 6000, yMm: 4040 },
    ],
    bottomMm: -200,
    topMm: 60,
  },
];

async function opened(more: object = { structures }) {
  const session = createSession({
    runTrial: async (_scene, trialId) => resultOf(trialId),
    tryCure: async () => null,
    glance: () => Promise.reject(new Error('not here')),
    probe: () => Promise.reject(new Error('not here')),
    dispose: () => {},
  });
  const route = createRoute(session, { glance: () => new Promise(() => {}) });
  await session.actions.openScene(sceneOf({ ...sample, ...more }));
  route.actions.workAt('room');
  const scene = () => {
    const now = session.session.getState().scene;
    if (now === null) throw new Error('nothing is open');
    return now;
  };
  const handle = (key: string) => {
    const found = route.plan()?.handles.find((one) => one.key === key);
    if (found === undefined) throw new Error(`no handle ${key}`);
    return found;
  };
  const steps = () => session.history.getState().past.map(({ label }) => label);
  return { ...session, ...route, document: session.actions, scene, handle, steps };
}

describe('a structure under the hand', () => {
  it('is held at its middle, at its top; once chosen also at what sizes it', async () => {
    const { plan, actions, handle } = await opened();
    expect(plan()?.handles.map(({ key }) => key)).toEqual(['room:structure:0:middle:0', 'room:structure:1:middle:0']);
    expect(handle('room:structure:0:middle:0').place).toEqual([5.05, 4.03, 0.095]);
    actions.chooseHandle('room:structure:0:middle:0');
    // Four corners and four sides more.
    expect(plan()?.handles).toHaveLength(2 + 8);
    expect(plan()?.lines).toEqual([
      rectangle(5000, 4000, 100, 60)
        .concat({ xMm: 5000, yMm: 4000 })
        .map(({ xMm, yMm }) => [xMm / 1000, yMm / 1000, 0.095]),
    ]);
    actions.chooseHandle('room:structure:1:middle:0');
    expect(plan()?.handles).toHaveLength(2 + 3);
  });

  it('is moved to whole centimetres as one step, with its numbers at the hand, and keeps its heights', async () => {
    const { actions, scene, handle, plan, route, steps, document } = await opened();
    const before = scene();
    expect(actions.take('room:structure:0:middle:0')).toBe(true);
    actions.moveTo([5.2, 4.1], snap);
    actions.moveTo([5.353, 4.236], snap);
    const { figures } = planWords(scene(), plan()!, handle('room:structure:0:middle:0'), route.getState(), show);
    actions.letGo();
    // The hand went 303 mm east and 206 mm north.
    expect(scene().structures?.[0]).toEqual({ ...structures[0], outline: rectangle(5300, 4210, 100, 60) });
    expect(figures.map((words) => words.replaceAll(/\s/g, ' '))).toEqual([
      '5300 mm east, 4210 mm north',
      '100 mm by 60 mm',
      '80 mm to 95 mm high',
    ]);
    expect(steps()).toEqual(['deck']);
    await document.undo();
    expect(scene()).toEqual(before);
  });

  it('is sized by a side and a corner; is put back by Escape; a corner that would bend it inwards is refused', async () => {
    const { actions, scene, route, steps } = await opened();
    actions.chooseHandle('room:structure:0:middle:0');
    actions.take('room:structure:0:side:1');
    actions.moveTo([5.147, 4.03], snap);
    actions.letGo();
    expect(scene().structures?.[0].outline).toEqual(rectangle(5000, 4000, 150, 60));
    const sized = scene();
    actions.take('room:structure:0:middle:0');
    actions.moveTo([7, 7], snap);
    actions.putBack();
    expect(scene()).toEqual(sized);
    expect(steps()).toHaveLength(1);
    actions.chooseHandle('room:structure:1:middle:0');
    actions.take('room:structure:1:corner:2');
    actions.moveTo([6.03, 4], { ...snap, ends: 0 });
    expect(route.getState().refusal).toMatch(/convex/);
    actions.putBack();
  });

  it('that comes back to where it was is no step, and one that is taken out is gone', async () => {
    const { actions, scene, steps } = await opened();
    actions.take('room:structure:0:middle:0');
    actions.moveTo([5.3, 4.3], snap);
    actions.moveTo([5.05, 4.03], snap);
    actions.letGo();
    expect(steps()).toEqual([]);
    expect(actions.remove('room:structure:0:middle:0')).toBeNull();
    expect(scene().structures?.map(({ name }) => name)).toEqual(['Pier']);
    expect(steps()).toEqual(['removal of Deck']);
  });
});

describe('two obstacles of one name', () => {
  it('have a remark each', async () => {
    const { scene } = await opened({
      room: {
        datumAboveFloorMm: 1000,
        obstacles: [
          { name: 'Post', round: { xMm: 400, yMm: 0, diameterMm: 50 } },
          { name: 'Post', round: { xMm: 900, yMm: 0, diameterMm: 50 } },
          { name: 'Post', round: { xMm: 400, yMm: 3000, diameterMm: 50 } },
        ],
      },
    });
    // The track of the sample runs east from the zero of the plan: it meets the first two and not the third.
    expect(roomRemarks(scene(), show).map(({ subject }) => subject)).toEqual(['obstacle:0', 'obstacle:1']);
    expect(roomRemarks(scene(), show, 'obstacle:1')).toHaveLength(1);
  });
});
