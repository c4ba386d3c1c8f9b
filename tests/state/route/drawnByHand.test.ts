import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import type { SimHost } from '../../../src/sim/types.ts';
import { createSession } from '../../../src/state/index.ts';
import { createRoute, noSnapping, ranInto } from '../../../src/state/route/index.ts';
import {
  addProfilePoint,
  draftAdvice,
  draftPasses,
  draftTrack,
  freshElement,
  insertElement,
  layTurnout,
  parallelTrack,
  setElement,
  setProfilePoint,
} from '../../../src/state/routeEdits/index.ts';
import { shapeScales, startingShapes, usualValues } from '../../../src/state/shapes/index.ts';
import { resultOf } from '../fakeHost.ts';

const snap = { lengthMm: 10, angleDeg: 5, ends: 0.05 };

/** An empty room for 16.5 mm gauge, and what a hand and the sheet do in it; each deed that makes a step is counted. */
async function emptyRoom() {
  const host: SimHost = {
    runTrial: async (_scene, trialId) => resultOf(trialId),
    tryCure: async () => null,
    probe: () => Promise.reject(new Error('not here')),
    glance: () => Promise.reject(new Error('not here')),
    dispose: () => {},
  };
  const shape = startingShapes.find(({ id }) => id === 'empty-room');
  const scale = shapeScales.find(({ name }) => name === 'OO');
  if (shape === undefined || scale === undefined) throw new Error('no empty room');
  const session = createSession(host);
  const route = createRoute(session, { glance: () => new Promise(() => {}) });
  await session.actions.openScene(shape.make(scale, usualValues(shape, scale)).scene);
  const scene = () => {
    const now = session.session.getState().scene;
    if (now === null) throw new Error('no scene');
    return now;
  };
  const track = (id: string) => {
    const drawn = draftTrack(scene(), id);
    if (drawn === null) throw new Error(`no ${id}`);
    return drawn;
  };
  return {
    ...session,
    dispose() {
      route.dispose();
      session.actions.dispose();
    },
    scene,
    track,
    /** Where track ends, m. */
    end: (id: string) => trackPoint(track(id), track(id).length),
    /** A drag of a handle of a track to a place (m), in three moves as a mouse makes them. */
    drag(trackId: string, key: string, [x, y]: readonly [number, number], how = snap) {
      route.actions.chooseTrack(trackId);
      const anchor = route.plan()?.handles.find((one) => one.key === key)?.anchor ?? [Number.NaN, Number.NaN];
      expect(route.actions.take(key)).toBe(true);
      for (const share of [0.6, 0.9, 1]) {
        route.actions.moveTo([anchor[0] + share * (x - anchor[0]), anchor[1] + share * (y - anchor[1])], how);
      }
      const { refusal, led } = route.route.getState();
      expect(refusal).toBeNull();
      route.actions.letGo();
      return led;
    },
    type(label: string, make: Parameters<typeof session.actions.attempt>[1]) {
      expect(session.actions.attempt(label, make)).toBeNull();
    },
  };
}

/** Greatest slope of the planned heights between places 1 mm apart. */
function steepest(line: ReturnType<Awaited<ReturnType<typeof emptyRoom>>['track']>): number {
  let most = 0;
  for (let s = 0; s + 0.001 <= line.length; s += 0.001) {
    most = Math.max(most, Math.abs(trackPoint(line, s + 0.001).z - trackPoint(line, s).z) / 0.001);
  }
  return most;
}

describe('drawn from an empty room', () => {
  it('a ramp, a helix and a crossover: each gesture one step, all undone to the start and done again to the same railway', async () => {
    const hand = await emptyRoom();
    const start = JSON.stringify(hand.scene());
    const states = [start];
    const step = <T>(deed: () => T): T => {
      const result = deed();
      states.push(JSON.stringify(hand.scene()));
      expect(hand.history.getState().past).toHaveLength(states.length - 1);
      return result;
    };
    step(() => hand.type('beside', (scene) => parallelTrack(scene, 'line', 60, { name: 'Up line' })));
    step(() => hand.drag('line', 'extend', [5.4, 0.3]));
    step(() => hand.type('helix', (scene) => insertElement(scene, 'line', 1, freshElement('helix', []))));
    step(() => hand.drag('line', 'end:1', [hand.end('line').x - 0.6, hand.end('line').y + 0.6]));
    step(() => hand.type('foot', (scene) => addProfilePoint(scene, 'line', 3500)));
    step(() => hand.type('head', (scene) => addProfilePoint(scene, 'line', 7000, 70)));
    step(() =>
      hand.type('turnout', (scene) =>
        layTurnout(scene, 'line', { name: 'Crossover', atMm: 800, hand: 'left', towards: 'end' }),
      ),
    );
    const kept = step(() => hand.drag('crossover', 'start', [1.3, 0.31]));
    // The hand lay 10 mm north of a line that the turnout keeps to.
    expect(kept).toBe('kept on Line: the hand is 10 mm off it');
    const led = step(() => hand.drag('crossover', 'extend', [2.1, 0.365]));
    expect(led).toBe('runs into Up line');
    const { y, heading, z } = hand.end('crossover');
    expect(y).toBeCloseTo(0.36, 6);
    expect(heading).toBeCloseTo(0, 6);
    expect(z).toBeCloseTo(trackPoint(hand.track('up-line'), 1.8).z, 9);
    for (const state of states.slice(0, -1).reverse()) {
      await hand.actions.undo();
      expect(JSON.stringify(hand.scene())).toBe(state);
    }
    expect(hand.history.getState().past).toHaveLength(0);
    for (const state of states.slice(1)) {
      await hand.actions.redo();
      expect(JSON.stringify(hand.scene())).toBe(state);
    }
    hand.dispose();
  });

  it('a branch is run into the track beside it without a mouse, and says why where it cannot', async () => {
    const hand = await emptyRoom();
    hand.type('turnout', (scene) =>
      layTurnout(scene, 'line', { name: 'Crossover', atMm: 800, hand: 'left', towards: 'end' }),
    );
    expect(hand.actions.attempt('join', (scene) => ranInto(scene, 'crossover'))).toMatch(/No other track lies within/);
    hand.type('beside', (scene) => parallelTrack(scene, 'line', 60, { name: 'Up line' }));
    hand.type('join', (scene) => ranInto(scene, 'crossover'));
    expect(hand.end('crossover').y).toBeCloseTo(0.36, 6);
    expect(hand.end('crossover').heading).toBeCloseTo(0, 6);
    hand.dispose();
  });

  // Four turns of 505 mm at 80 mm a turn: 320 mm over 4 * 2π * 505 mm, 1 in 39.7, and 80 mm from rail to rail less the deck.
  it('a ramp into a helix has the grade and the headroom of the closed form', async () => {
    const hand = await emptyRoom();
    const { thicknessMm, underlayMm, trackMm } = hand.scene().deck;
    hand.type('helix', (scene) => insertElement(scene, 'line', 1, freshElement('helix', [])));
    hand.type('radius', (scene) => setElement(scene, 'line', 1, { radiusMm: 505 }));
    hand.type('turns', (scene) => setElement(scene, 'line', 1, { turns: 4 }));
    const turnMm = 2 * Math.PI * 505;
    hand.type('foot', (scene) => addProfilePoint(scene, 'line', 3000));
    hand.type('head', (scene) => addProfilePoint(scene, 'line', 3000 + 4 * turnMm, 320));
    expect(1 / steepest(hand.track('line'))).toBeCloseTo(39.66, 1);
    // Inside the helix, where nothing but a turn passes over a turn; nearer to its mouth it passes over the ramp too, lower.
    const inside = draftPasses(hand.scene(), 'line').filter(({ chainage }) => {
      const turns = (chainage * 1000 - 3000) / turnMm;
      return turns > 1 && turns < 3;
    });
    expect(inside.length).toBeGreaterThan(10);
    // The deck above falls on over the half of its width that is looked at (35 mm, NEM 122): no more than that below the middle.
    expect(thicknessMm + underlayMm + trackMm).toBe(17);
    for (const { clear } of inside) {
      expect(clear * 1000).toBeLessThan(63.001);
      expect(clear * 1000).toBeGreaterThan(63 - (35.1 * 80) / turnMm);
    }
    hand.dispose();
  });

  // 80 mm over 3200 mm with 500 mm for the vertical curves: 80 in 2700, 1 in 33.75.
  it('a ramp with vertical curves is as steep as what they leave of it', async () => {
    const hand = await emptyRoom();
    hand.drag('line', 'extend', [3.5, 0.3]);
    expect(hand.track('line').length).toBeCloseTo(3.2, 9);
    hand.type('foot', (scene) => addProfilePoint(scene, 'line', 250));
    hand.type('head', (scene) => addProfilePoint(scene, 'line', 2950, 80));
    hand.type('end', (scene) => addProfilePoint(scene, 'line', 3200, 80));
    for (const point of [1, 2]) {
      hand.type('curve', (scene) => setProfilePoint(scene, 'line', point, { verticalCurveLengthMm: 500 }));
    }
    expect(1 / steepest(hand.track('line'))).toBeCloseTo(33.75, 2);
    expect(trackPoint(hand.track('line'), 3.2).z).toBeCloseTo(0.08, 9);
    hand.dispose();
  });

  it('a curve into its reverse of 438 mm is told from the drawing, and no more with a straight of 600 mm between', async () => {
    const hand = await emptyRoom();
    const curve = (turn: 'left' | 'right') => ({ kind: 'arc', radiusMm: 438, turn, angleDeg: 30 }) as const;
    hand.type('left', (scene) => insertElement(scene, 'line', 1, curve('left')));
    hand.type('right', (scene) => insertElement(scene, 'line', 2, curve('right')));
    const told = () => draftAdvice(hand.scene()).filter(({ kind }) => kind === 'reverse-curve');
    expect(told()).toHaveLength(1);
    hand.type('between', (scene) => insertElement(scene, 'line', 2, freshElement('straight', [])));
    hand.type('length', (scene) => setElement(scene, 'line', 2, { lengthMm: 600 }));
    expect(told()).toHaveLength(0);
    hand.dispose();
  });

  it('new track laid by the keyboard goes where it is taken, led to nothing', async () => {
    const hand = await emptyRoom();
    expect(hand.drag('line', 'extend', [4.1234, 0.3], noSnapping)).toBeNull();
    expect(hand.end('line').x).toBeCloseTo(4.1234, 9);
    hand.dispose();
  });
});
