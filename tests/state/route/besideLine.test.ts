import { afterEach, describe, expect, it } from 'vitest';
import { createSession } from '../../../src/state/index.ts';
import { createRoute, noSnapping } from '../../../src/state/route/index.ts';
import { ledSpacing, normSpacings, parallelTrack } from '../../../src/state/routeEdits/index.ts';
import { shapeScales, startingShapes, usualValues } from '../../../src/state/shapes/index.ts';
import { resultOf } from '../fakeHost.ts';

const snap = { lengthMm: 10, angleDeg: 5, ends: 0.02 };

/** One straight track in a room, and one beside it, 200 mm to its left. */
async function twoTracks(scaleName: string) {
  const shape = startingShapes.find(({ id }) => id === 'empty-room');
  const scale = shapeScales.find(({ name }) => name === scaleName);
  if (shape === undefined || scale === undefined) throw new Error(scaleName);
  const session = createSession({
    runTrial: async (_scene, trialId) => resultOf(trialId),
    tryCure: async () => null,
    probe: () => Promise.reject(new Error('not here')),
    glance: () => Promise.reject(new Error('not here')),
    dispose: () => {},
  });
  const route = createRoute(session, { glance: () => new Promise(() => {}) });
  const one = shape.make(scale, usualValues(shape, scale)).scene;
  const scene = parallelTrack(one, one.tracks[0].id, 200, { name: 'Second' });
  await session.actions.openScene(scene);
  const [first, second] = scene.tracks;
  const start = first.start as { xMm: number; yMm: number; headingDeg: number };
  const heading = (start.headingDeg * Math.PI) / 180;
  /** A place so far along the first track and to its left, mm, in m. */
  const place = (along: number, left: number) =>
    [
      (start.xMm + along * Math.cos(heading) - left * Math.sin(heading)) / 1000,
      (start.yMm + along * Math.sin(heading) + left * Math.cos(heading)) / 1000,
    ] as const;
  route.actions.chooseTrack(second.id);
  /** How far the start of the second track lies to the left of the first, mm. */
  const left = () => {
    const now = session.session.getState().scene?.tracks[1].start as { xMm: number; yMm: number };
    return -(now.xMm - start.xMm) * Math.sin(heading) + (now.yMm - start.yMm) * Math.cos(heading);
  };
  return { ...route, session, scene, first, place, left, steps: () => session.history.getState().past.length };
}

let open: Awaited<ReturnType<typeof twoTracks>> | undefined;
afterEach(() => open?.dispose());

describe('a track pulled along beside another', () => {
  // Source: NEM 112, in a club's print: 46 mm on the line and 52 mm in stations in H0, 25 mm and 28 mm in N.
  it.each([
    ['HO', 46, 49.5, 52],
    ['N', 25, 27, 28],
  ])(
    'in %s comes to lie at %d mm from 3 mm off, and from %d mm at %d mm, with the name of the norm',
    async (scale, line, off, station) => {
      open = await twoTracks(scale);
      const { actions, route, place, left, steps } = open;
      actions.take('start');
      actions.moveTo(place(303, line - 3), snap);
      expect(left()).toBeCloseTo(line, 3);
      expect(route.getState().led).toMatch(new RegExp(`^${line} mm from .*NEM 112`));
      actions.moveTo(place(303, off), snap);
      expect(left()).toBeCloseTo(station, 3);
      // On its other side too.
      actions.moveTo(place(303, 1 - line), snap);
      expect(left()).toBeCloseTo(-line, 3);
      actions.letGo();
      expect(steps()).toBe(1);
    },
  );

  it('is free with Alt, out of reach, and where it does not run the same way', async () => {
    open = await twoTracks('HO');
    const { actions, route, place, left } = open;
    actions.take('start');
    actions.moveTo(place(303, 43), noSnapping);
    expect(left()).toBeCloseTo(43, 6);
    expect(route.getState().led).toBeNull();
    // 28 mm from the nearest norm, of 20 mm reach.
    actions.moveTo(place(300, 80), snap);
    expect(route.getState().led).toBeNull();
    actions.letGo();
    actions.take('heading');
    actions.moveTo(place(0, 300), noSnapping);
    actions.letGo();
    actions.take('start');
    actions.moveTo(place(300, 44), snap);
    expect(route.getState().led).toBeNull();
    actions.putBack();
  });
});

describe('a spacing that is typed or dragged as a number', () => {
  it('is led to the nearest of the norm within reach, and says which', async () => {
    open = await twoTracks('HO');
    const norms = normSpacings(open.scene, open.first);
    expect(norms.map(({ mm }) => mm)).toEqual([46, 52]);
    expect(ledSpacing(48, norms, 2)).toMatchObject({ mm: 46, because: { source: /NEM 112/ } });
    expect(ledSpacing(50, norms, 2)?.mm).toBe(52);
    expect(ledSpacing(49, norms, 2)).toBeNull();
  });
});
