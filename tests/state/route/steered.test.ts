import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { createRoute, type Steer } from '../../../src/state/route/index.ts';
import { draftTrack, freshElement, insertElement } from '../../../src/state/routeEdits/index.ts';
import { shapeScales, startingShapes, usualValues } from '../../../src/state/shapes/index.ts';
import { resultOf } from '../fakeHost.ts';

async function emptyRoom() {
  const shape = startingShapes.find(({ id }) => id === 'empty-room');
  const scale = shapeScales.find(({ name }) => name === 'OO');
  if (shape === undefined || scale === undefined) throw new Error('no empty room');
  const session = createSession({
    runTrial: async (_scene, trialId) => resultOf(trialId),
    tryCure: async () => null,
    probe: () => Promise.reject(new Error('not here')),
    glance: () => Promise.reject(new Error('not here')),
    dispose: () => {},
  });
  const route = createRoute(session, { glance: () => new Promise(() => {}) });
  await session.actions.openScene(shape.make(scale, usualValues(shape, scale)).scene);
  const scene = () => {
    const now = session.session.getState().scene;
    if (now === null) throw new Error('no scene');
    return now;
  };
  const track = () => {
    const drawn = draftTrack(scene(), 'line');
    if (drawn === null) throw new Error('no line');
    return drawn;
  };
  return {
    session,
    route,
    scene,
    /** Where track ends: m and rad. */
    end: () => trackPoint(track(), track().length),
    kinds: () => scene().tracks[0].alignment.map(({ kind }) => kind),
    /** Keys held down one after the other, let go at the end: what was refused last. */
    keys(...presses: Partial<Steer>[]): string | null {
      expect(route.actions.take('extend')).toBe(true);
      for (const press of presses) route.actions.steer({ ahead: 0, leftDeg: 0, ...press });
      const { refusal } = route.route.getState();
      route.actions.letGo();
      return refusal;
    },
  };
}

const deg = Math.PI / 180;

describe('new track by the arrow keys', () => {
  let room: Awaited<ReturnType<typeof emptyRoom>>;
  beforeEach(async () => {
    room = await emptyRoom();
  });
  afterEach(() => {
    room.route.dispose();
    room.session.actions.dispose();
  });

  it('goes straight on and back again to the railway that was, each hold one step', () => {
    const before = room.scene();
    const { x, y } = room.end();
    expect(room.keys({ ahead: 0.01 }, { ahead: 0.01 }, { ahead: 0.001 })).toBeNull();
    expect(room.end().x).toBeCloseTo(x + 0.021, 9);
    expect(room.end().y).toBeCloseTo(y, 9);
    expect(room.session.history.getState().past).toHaveLength(1);
    expect(room.keys({ ahead: -0.021 })).toBeNull();
    expect(room.scene()).toEqual(before);
    expect(room.session.history.getState().past).toHaveLength(2);
  });

  // Closed form: whatever the easements take of it, a bend of 20° and one of 25° end in those directions.
  it.each([
    ['left', 1],
    ['right', -1],
  ] as const)('bends to the %s by whole steps, eased, and further at each press', (turn, hand) => {
    const { heading } = room.end();
    expect(room.keys({ leftDeg: 5 * hand })).toBeNull();
    expect(room.kinds()).toEqual(['straight', 'transition', 'arc', 'transition']);
    expect(room.scene().tracks[0].alignment[2]).toMatchObject({ turn });
    const first = (room.end().heading - heading) / deg / hand;
    expect(first).toBeGreaterThan(0);
    expect(first / 5).toBeCloseTo(Math.round(first / 5), 6);
    expect(room.keys({ leftDeg: 5 * hand })).toBeNull();
    expect((room.end().heading - heading) / deg / hand).toBeCloseTo(first + 5, 6);
    expect(room.kinds()).toHaveLength(4);
    expect(room.session.history.getState().past).toHaveLength(2);
  });

  it('bends back until the bend and its easements are gone', () => {
    const before = room.scene();
    expect(room.keys({ leftDeg: 5 }, { leftDeg: 5 }, { leftDeg: -5 }, { leftDeg: -5 })).toBeNull();
    expect(room.scene()).toEqual(before);
    // A hold that ends where it began is no step.
    expect(room.session.history.getState().past).toHaveLength(0);
  });

  it('begins another bend after a straight, and says why where nothing can be taken back', () => {
    expect(room.keys({ leftDeg: 5 }, { ahead: 0.3 }, { leftDeg: -5 })).toBeNull();
    expect(room.kinds()).toEqual([
      ...['straight', 'transition', 'arc', 'transition'],
      ...['straight', 'transition', 'arc', 'transition'],
    ]);
    expect(room.keys({ ahead: -0.01 })).toMatch(/No straight is left at the end/);
    expect(room.keys({ leftDeg: 5 }, { ahead: -0.3 })).toBeNull();
    expect(room.kinds()).toEqual(['straight', 'transition', 'arc', 'transition']);
    expect(room.keys({ leftDeg: -30 }, { ahead: -60 })).toMatch(/is all there is of/);
  });

  it('turns a helix at the end on, and goes back by Escape', () => {
    room.session.actions.attempt('helix', (scene) => insertElement(scene, 'line', 1, freshElement('helix', [])));
    const helix = () => room.scene().tracks[0].alignment[1];
    const before = helix();
    if (before.kind !== 'helix') throw new Error(before.kind);
    const more = before.turn === 'left' ? 90 : -90;
    expect(room.keys({ leftDeg: more })).toBeNull();
    expect(helix()).toMatchObject({ turns: before.turns + 0.25 });
    room.route.actions.take('extend');
    room.route.actions.steer({ ahead: 0, leftDeg: more });
    room.route.actions.putBack();
    expect(helix()).toMatchObject({ turns: before.turns + 0.25 });
    expect(room.session.history.getState().past).toHaveLength(2);
  });

  it('tells what its keys do', () => {
    expect(room.route.plan()?.handles.find(({ key }) => key === 'extend')?.keys).toMatch(/Up lays straight on/);
  });
});
