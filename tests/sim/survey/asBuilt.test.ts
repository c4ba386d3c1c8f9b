import { describe, expect, it } from 'vitest';
import type { Scene, SceneTrack } from '../../../src/scene/index.ts';
import { asBuiltScene } from '../../../src/sim/survey/index.ts';
import { sample, sceneOf } from '../../scene/sample.ts';

const line = {
  id: 'line',
  name: 'Line',
  start: { xMm: 0, yMm: 0, headingDeg: 0 },
  alignment: [{ kind: 'straight', lengthMm: 1200.04 }],
  profile: [{ atMm: 0, heightMm: 0 }],
};
const other = { ...line, id: 'other', name: 'Other', start: { xMm: 0, yMm: 300, headingDeg: 0 } };
const sceneWith = (supports: unknown, more = {}): Scene =>
  sceneOf({
    ...sample,
    tracks: [
      { ...line, ...(supports === null ? {} : { supports }), ...more },
      { ...other, supports: { everyMm: 400, off: [{ support: 2, byMm: 9 }] } },
    ],
    trials: [{ ...sample.trials[0], startMm: 700, finishMm: 1100 }],
  });
const built = (scene: Scene, departures: readonly number[], leans?: Parameters<typeof asBuiltScene>[3]): SceneTrack =>
  asBuiltScene(scene, 'line', departures, leans).tracks[0]!;

describe('a scene as built', () => {
  it('has heights of a row of supports by number, from 1, to a tenth of a micrometre, without those that stand right', () => {
    const scene = sceneWith({ everyMm: 400, off: [{ support: 3, byMm: -5 }] });
    // 1.23456 mm up, 0.04 µm down, which is nothing, and one that the departures say nothing of.
    expect(built(scene, [0, 0.00123456, -4e-8]).supports).toEqual({
      everyMm: 400,
      off: [{ support: 2, byMm: 1.2346 }],
    });
    expect(built(scene, [0, 0, 0, 0]).supports).toEqual({ everyMm: 400 });
  });

  it('has heights of supports placed one by one at their own, whatever they said before', () => {
    const scene = sceneWith([{ atMm: 0 }, { atMm: 500, offMm: 3 }, { atMm: 1100 }]);
    expect(built(scene, [-0.002, 0, 0.0007]).supports).toEqual([
      { atMm: 0, offMm: -2 },
      { atMm: 500 },
      { atMm: 1100, offMm: 0.7 },
    ]);
  });

  it('leaves other tracks alone, and a track on no supports', () => {
    const scene = sceneWith({ everyMm: 400 });
    expect(asBuiltScene(scene, 'line', [0.001]).tracks[1]).toBe(scene.tracks[1]);
    const bare = sceneWith(null);
    expect(built(bare, [0.001, 0.002]).supports).toBeUndefined();
  });

  it('leans as read, within the track and to a thousandth of a per cent; not at all where it lies level', () => {
    const before = { crossLevels: [{ atMm: 600, offPercent: 1 }] };
    const scene = sceneWith({ everyMm: 400 }, before);
    // The last place lies beyond the end by what rounding makes of it.
    const leans = [
      { chainage: 0.5, lean: 0.0123456 },
      { chainage: 1.20005, lean: -0.02 },
    ];
    expect(built(scene, [], leans).crossLevels).toEqual([
      { atMm: 500, offPercent: 1.235 },
      { atMm: 1200.04, offPercent: -2 },
    ]);
    expect(built(scene, [], [{ chainage: 0.5, lean: 4e-6 }])).not.toHaveProperty('crossLevels');
    expect(built(scene, []).crossLevels).toEqual(before.crossLevels);
  });
});
