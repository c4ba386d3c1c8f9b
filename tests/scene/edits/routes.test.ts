import { describe, expect, it } from 'vitest';
import { insertElement, removeTrack, setElement } from '../../../src/scene/edits/index.ts';
import { parseScene, type Scene } from '../../../src/scene/index.ts';
import { sample, sceneOf } from '../sample.ts';

const { track: _track, towards: _towards, ...trial } = sample.trials[0];
const second = {
  id: 'on',
  name: 'On',
  // Where the line ends: 2 sin 1 + 4 m east, 2 (1 - cos 1) m north of its start.
  start: { xMm: 4000 + 2000 * Math.sin(1), yMm: 2000 * (1 - Math.cos(1)), headingDeg: 0 },
  alignment: [{ kind: 'straight', lengthMm: 3000 }],
  profile: [{ atMm: 0, heightMm: 80 }],
};
const scene = sceneOf({
  ...sample,
  tracks: [...sample.tracks, second],
  trials: [
    {
      ...trial,
      route: [
        { track: 'line', towards: 'end', fromMm: 500 },
        { track: 'on', towards: 'end', toMm: 2500 },
      ],
      startMm: 1000,
      finishMm: 7500,
      orders: [
        { atS: 0, setting: 0.5 },
        { atMm: 6500, setting: 0.3 },
      ],
    },
  ],
});

const sound = (next: Scene) => expect(parseScene(structuredClone(next))).toMatchObject({ ok: true });

describe('places along a route', () => {
  it('go with the track they lie on when one before it is lengthened', () => {
    const next = insertElement(scene, 'line', 0, { kind: 'straight', lengthMm: 400 });
    sound(next);
    // Everything on the line lies 400 mm further on it, so the route begins 400 mm further on too, and nothing along it moves.
    expect(next.trials[0]).toMatchObject({
      route: [{ fromMm: 900 }, { toMm: 2500 }],
      startMm: 1000,
      finishMm: 7500,
    });
  });

  it('move by what is put in before them', () => {
    const next = setElement(scene, 'line', 3, { lengthMm: 2600 });
    sound(next);
    // The start stays, on the first straight; what lies on the second track is 600 mm further along the route.
    const [{ startMm, finishMm, orders }] = next.trials;
    expect(startMm).toBeCloseTo(1000, 6);
    expect(finishMm).toBeCloseTo(8100, 6);
    expect(orders[1].atMm).toBeCloseTo(7100, 6);
  });

  it('go with a track of the route that is taken out', () => {
    const left = removeTrack(
      { ...scene, trials: [...scene.trials, ...sceneOf(sample).trials.map((one) => ({ ...one, id: 'plain' }))] },
      'on',
    );
    expect(left.trials.map(({ id }) => id)).toEqual(['plain']);
    const moved = removeTrack(scene, 'on').trials[0];
    expect(moved).toMatchObject({ track: 'line', towards: 'end' });
    expect(moved).not.toHaveProperty('route');
  });
});
