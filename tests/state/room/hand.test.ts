import { describe, expect, it } from 'vitest';
import { changeRoom, parseScene, type Scene } from '../../../src/scene/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { roomRemarks } from '../../../src/state/room/index.ts';
import { createRoute, noSnapping, planWords } from '../../../src/state/route/index.ts';
import { sample, sampleScene, sceneOf } from '../../scene/sample.ts';
import { resultOf } from '../fakeHost.ts';

const snap = { lengthMm: 10, angleDeg: 5, ends: 0.05 };
const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

/** A room of 4 by 3 m whose corners run counter-clockwise from the zero of the plan, with one door, one of each obstacle and a board. */
const room = {
  datumAboveFloorMm: 1000,
  corners: [
    { xMm: 0, yMm: 0 },
    { xMm: 4000, yMm: 0 },
    { xMm: 4000, yMm: 3000 },
    { xMm: 0, yMm: 3000 },
  ],
  doors: [{ wall: 1, fromMm: 300, widthMm: 800, hinge: 'near', opens: 'inwards' } as const],
  obstacles: [
    {
      name: 'Breast',
      outline: [
        { xMm: 1000, yMm: 2600 },
        { xMm: 2000, yMm: 2600 },
        { xMm: 1800, yMm: 3000 },
        { xMm: 1200, yMm: 3000 },
      ],
    },
    { name: 'Post', round: { xMm: 3000, yMm: 2000, diameterMm: 200 } },
  ],
  baseboards: [{ xMm: 1500, yMm: 1200, lengthMm: 1000, widthMm: 600 }],
};

async function opened(of: typeof room | null = room) {
  const ran: Scene[] = [];
  const session = createSession({
    async runTrial(scene, trialId) {
      ran.push(scene);
      return resultOf(trialId);
    },
    tryCure: async () => null,
    glance: () => Promise.reject(new Error('not here')),
    probe: () => Promise.reject(new Error('not here')),
    dispose: () => {},
  });
  const route = createRoute(session, { glance: () => new Promise(() => {}) });
  await session.actions.openScene(of === null ? sampleScene() : sceneOf({ ...sample, room: of }));
  route.actions.workAt('room');
  const now = () => session.session.getState().scene?.room;
  const handle = (key: string) => {
    const found = route.plan()?.handles.find((one) => one.key === key);
    if (found === undefined) throw new Error(`no handle ${key}`);
    return found;
  };
  /** A pull at a handle to places in plan, m, let go of at the last. */
  const pull = (key: string, ...places: (readonly [number, number])[]) => {
    expect(route.actions.take(key)).toBe(true);
    for (const place of places) route.actions.moveTo(place, snap);
    route.actions.letGo();
  };
  const steps = () => session.history.getState().past.length;
  return { ...session, ...route, document: session.actions, ran, now, handle, pull, steps };
}

describe('handles of the room', () => {
  it('are the corners and the middle of each thing; what is chosen has those that size it', async () => {
    const { plan, actions } = await opened();
    const keys = () => plan()?.handles.map(({ key }) => key);
    const calm = [0, 1, 2, 3].map((k) => `room:corner:${k}`);
    calm.push('room:door:0:place', 'room:obstacle:0:middle:0', 'room:obstacle:1:middle:0', 'room:board:0:middle:0');
    expect(keys()).toEqual(calm);
    actions.chooseHandle('room:obstacle:1:middle:0');
    expect(keys()).toContain('room:obstacle:1:across:0');
    expect(keys()).toHaveLength(calm.length + 1);
    actions.chooseHandle('room:board:0:middle:0');
    expect(keys()).toHaveLength(calm.length + 8);
    actions.chooseHandle('room:corner:1');
    // The walls, and another corner in the two that meet there.
    expect(keys()).toHaveLength(calm.length + 4 + 2);
    actions.workAt('line');
    expect(keys()?.some((key) => key.startsWith('room:'))).toBe(false);
  });

  it('stand where the floor, the boards and the track are', async () => {
    const { handle } = await opened();
    expect(handle('room:corner:2').place).toEqual([4, 3, -1]);
    expect(handle('room:obstacle:1:middle:0').place).toEqual([3, 2, 0]);
  });
});

describe('a pull in the room', () => {
  it('takes a corner to whole steps, and to a right angle within reach: one step, undone and done again', async () => {
    const { pull, now, steps, document } = await opened();
    const before = now();
    pull('room:corner:2', [4.4, 3.4], [4.012, 3.333]);
    // Square at corner 2 the wall goes straight up from x = 4000.
    expect(now()?.corners?.[2]).toEqual({ xMm: 4000, yMm: 3330 });
    expect(steps()).toBe(1);
    await document.undo();
    expect(now()).toEqual(before);
    await document.redo();
    expect(now()?.corners?.[2].yMm).toBe(3330);
  });

  it('says what it was led to, and nothing where it is free', async () => {
    const { actions, route, now } = await opened();
    actions.take('room:corner:2');
    actions.moveTo([4.012, 3.02], snap);
    expect(route.getState().led).toBe('square at corner 2 and square at corner 4');
    expect(now()?.corners?.[2]).toEqual({ xMm: 4000, yMm: 3000 });
    actions.moveTo([4.012, 3.333], noSnapping);
    expect(route.getState().led).toBeNull();
    expect(now()?.corners?.[2]).toEqual({ xMm: 4012, yMm: 3333 });
    actions.putBack();
    expect(now()?.corners?.[2]).toEqual({ xMm: 4000, yMm: 3000 });
  });

  it('that would cross walls or leave no room for a door is refused in words, and the last that could stays', async () => {
    const { actions, route, now, steps } = await opened();
    actions.take('room:corner:2');
    actions.moveTo([3.5, 2], noSnapping);
    actions.moveTo([-1, 1], noSnapping);
    expect(route.getState().refusal).toMatch(/sides? .* cross/);
    expect(now()?.corners?.[2]).toEqual({ xMm: 3500, yMm: 2000 });
    actions.putBack();
    expect(steps()).toBe(0);
    actions.take('room:corner:1');
    actions.moveTo([0.9, 0], noSnapping);
    expect(route.getState().refusal).toMatch(/wall 1/);
    actions.putBack();
  });

  it('that ends where it began is no step', async () => {
    const { pull, now, steps } = await opened();
    const before = now();
    pull('room:board:0:middle:0', [2.5, 1.9], [2, 1.5]);
    expect(now()).toEqual(before);
    expect(steps()).toBe(0);
  });

  it('moves a wall along with its corners and keeps their angles', async () => {
    const { actions, pull, now } = await opened();
    actions.chooseHandle('room:corner:1');
    pull('room:wall:1', [4.304, 1]);
    expect(now()?.corners?.slice(1, 3)).toEqual([
      { xMm: 4300, yMm: 0 },
      { xMm: 4300, yMm: 3000 },
    ]);
  });

  it('makes another corner in a wall, which is then in hand', async () => {
    const { actions, pull, now, route } = await opened();
    actions.chooseHandle('room:corner:1');
    pull('room:split:1', [3.4, 1.5]);
    expect(now()?.corners).toHaveLength(5);
    expect(now()?.corners?.[2]).toEqual({ xMm: 3400, yMm: 1500 });
    expect(route.getState().chosenHandle).toBe('room:corner:2');
  });

  it('takes a door along its wall, round the corner into the next, and opens it as far as the hand goes', async () => {
    const { actions, pull, now } = await opened();
    pull('room:door:0:place', [2.004, 0.01]);
    expect(now()?.doors?.[0]).toMatchObject({ wall: 1, fromMm: 1600 });
    pull('room:door:0:place', [3.99, 2]);
    expect(now()?.doors?.[0]).toMatchObject({ wall: 2, fromMm: 1600 });
    // Hung on the near jamb at (4000, 1600), closed towards (4000, 2400); 30 degrees outwards is to the east.
    actions.chooseHandle('room:door:0:place');
    const angle = (60 * Math.PI) / 180;
    pull('room:door:0:leaf', [4 + 0.8 * Math.cos(angle), 1.6 + 0.8 * Math.sin(angle)]);
    expect(now()?.doors?.[0]).toMatchObject({ opens: 'outwards', swingDeg: 30 });
    pull('room:door:0:far', [4, 2.297]);
    expect(now()?.doors?.[0]).toMatchObject({ fromMm: 1600, widthMm: 700 });
  });

  it('moves and sizes boards and obstacles, flush with a wall within reach', async () => {
    const { actions, pull, now } = await opened();
    // The middle goes to x = 526: the west edge would be at 26 mm, the wall at 0 is within reach.
    pull('room:board:0:middle:0', [0.526, 1.504]);
    expect(now()?.baseboards?.[0]).toEqual({ xMm: 0, yMm: 1200, lengthMm: 1000, widthMm: 600 });
    pull('room:board:0:corner:2', [1.203, 2.002]);
    expect(now()?.baseboards?.[0]).toEqual({ xMm: 0, yMm: 1200, lengthMm: 1200, widthMm: 800 });
    actions.chooseHandle('room:obstacle:1:middle:0');
    pull('room:obstacle:1:across:0', [3.204, 2]);
    expect(now()?.obstacles?.[1].round?.diameterMm).toBe(410);
    actions.chooseHandle('room:obstacle:0:middle:0');
    pull('room:obstacle:0:corner:0', [0.903, 2.502]);
    expect(now()?.obstacles?.[0].outline?.[0]).toEqual({ xMm: 900, yMm: 2500 });
  });

  it('solves no trial anew: nothing of the room is computed into a risk', async () => {
    const { pull, ran, session } = await opened();
    const before = ran.length;
    pull('room:corner:2', [4.5, 3.5]);
    expect(ran).toHaveLength(before);
    expect(session.getState().compiled?.scene).toBe(session.getState().scene);
  });
});

describe('what is drawn in an empty room', () => {
  it('is pulled open, one step each, and can be taken out again', async () => {
    const { actions, now, steps, document } = await opened(null);
    const drawn = (tool: Parameters<typeof actions.drawWith>[0], from: [number, number], to: [number, number]) => {
      actions.drawWith(tool);
      expect(actions.take('draw', from)).toBe(true);
      actions.moveTo([from[0] + 0.02, from[1] + 0.02], snap);
      actions.moveTo(to, snap);
      actions.letGo();
    };
    drawn('walls', [-1, -1], [3, 2]);
    drawn('door', [0.004, -0.98], [0.804, -1.02]);
    drawn('pillar', [2.5, 1.5], [2.8, 1.9]);
    drawn('post', [0.5, 0.5], [0.56, 0.5]);
    drawn('board', [0, 0.7], [2.4, 1.3]);
    expect(now()).toEqual({
      datumAboveFloorMm: 950,
      corners: [
        { xMm: -1000, yMm: -1000 },
        { xMm: 3000, yMm: -1000 },
        { xMm: 3000, yMm: 2000 },
        { xMm: -1000, yMm: 2000 },
      ],
      doors: [{ wall: 1, fromMm: 1000, widthMm: 800, hinge: 'near', opens: 'inwards' }],
      obstacles: [
        {
          name: 'Pillar',
          outline: [
            { xMm: 2500, yMm: 1500 },
            { xMm: 2800, yMm: 1500 },
            { xMm: 2800, yMm: 1900 },
            { xMm: 2500, yMm: 1900 },
          ],
        },
        { name: 'Post', round: { xMm: 500, yMm: 500, diameterMm: 120 } },
      ],
      baseboards: [{ xMm: 0, yMm: 700, lengthMm: 2400, widthMm: 600 }],
    });
    expect(steps()).toBe(5);
    expect(actions.remove('room:obstacle:0:middle:0')).toBeNull();
    expect(now()?.obstacles).toHaveLength(1);
    for (let k = 0; k < 6; k++) await document.undo();
    expect(now()).toBeUndefined();
  });

  it('too small to be anything is refused, and the tool stays in hand', async () => {
    const { actions, route, now } = await opened(null);
    actions.drawWith('board');
    actions.take('draw', [0, 0]);
    actions.moveTo([0.001, 0.001], snap);
    expect(route.getState().refusal).toMatch(/10 mm/);
    actions.letGo();
    expect(now()).toBeUndefined();
    expect(route.getState().drawing).toBe('board');
  });

  it('by keyboard is put where it is usual, chosen, and sound', async () => {
    const { actions, session, route } = await opened(null);
    for (const tool of ['walls', 'door', 'pillar', 'post', 'board'] as const) expect(actions.putIn(tool)).toBeNull();
    expect(route.getState().chosenHandle).toBe('room:board:0:middle:0');
    const parsed = parseScene(session.getState().scene);
    expect(parsed.ok ? [] : parsed.problems).toEqual([]);
  });
});

describe('words at the hand', () => {
  it('are what the handle sets, and what will not go well', async () => {
    const { plan, session, route, handle } = await opened();
    const { scene } = session.getState();
    const now = plan();
    if (scene === null || now === null) throw new Error('nothing open');
    const words = (key: string) => planWords(scene, now, handle(key), route.getState(), show);
    expect(words('room:corner:2').figures.join(' ')).toMatch(/4\D?000.mm east, 3\D?000.mm north/);
    expect(words('room:door:0:place').figures.join(' ')).toMatch(/300.mm from corner 1 800.mm wide/);
    expect(words('room:obstacle:1:middle:0').figures.join(' ')).toMatch(/200.mm across/);
  });

  it('tell of a door that strikes a board, of boards and obstacles outside, of decks in the way', () => {
    const moved = (change: object) => changeRoom(sampleScene(), { ...room, ...change });
    const told = (scene: Scene) => roomRemarks(scene, show).map(({ words }) => words);
    const board = { xMm: 300, yMm: 500, lengthMm: 1000, widthMm: 600 };
    expect(told(moved({ baseboards: [board] })).join('\n')).toMatch(/Door 1 strikes board 1 when \d+° open/);
    expect(told(moved({ baseboards: [{ ...board, xMm: 3500 }] })).join('\n')).toMatch(/Board 1 reaches out/);
    const post = { name: 'Post', round: { xMm: 500, yMm: 0, diameterMm: 100 } };
    const line = told(changeRoom(sampleScene(), { datumAboveFloorMm: 1000, obstacles: [post] })).join('\n');
    expect(line).toMatch(/The deck of .* runs into Post by/);
    expect(
      told(changeRoom(sampleScene(), { datumAboveFloorMm: 1000, obstacles: [{ ...post, heightMm: 500 }] })),
    ).toEqual([]);
  });
});
