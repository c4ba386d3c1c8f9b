import { describe, expect, it } from 'vitest';
import { layStraightOn, parseScene, type Scene, setSupportsEvery } from '../../../src/scene/index.ts';
import { sample, sceneOf } from '../sample.ts';

/** The sample's line, read with a level at two chainages and at its last support, and a portal near its end. */
const surveyed = (): Scene =>
  sceneOf({
    ...sample,
    tracks: [{ ...sample.tracks[0], profile: [{ atMm: 0, heightMm: 0 }] }],
    lineside: [
      { kind: 'portal', name: 'Portal', track: 'line', atMm: 5700, widthMm: 80, heightMm: 90 },
      { kind: 'portal', name: 'Gate', track: 'line', atMm: 3000, widthMm: 80, heightMm: 90 },
    ],
    surveys: [
      {
        id: 'first',
        name: 'First survey',
        track: 'line',
        instruments: [{ id: 'level', reads: 'grade' }],
        readings: [
          { kind: 'grade', instrument: 'level', atMm: 1500, baseMm: 300, gradePercent: 0 },
          { kind: 'grade', instrument: 'level', atMm: 5600, baseMm: 300, gradePercent: 0 },
          { kind: 'grade', instrument: 'level', support: 20, baseMm: 300, gradePercent: 0 },
        ],
      },
    ],
  });

const readingsOf = (scene: Scene) =>
  scene.surveys?.[0].readings.map((one) => (one.kind === 'rise' ? one.fromSupport : (one.atMm ?? one.support)));

describe('a track made shorter at its end', () => {
  it('loses the readings and portals beyond it, as when an element is taken out', () => {
    const short = layStraightOn(surveyed(), 'line', -500);
    expect(parseScene(short).ok).toBe(true);
    // 5500 mm are left, under which a row of supports 300 mm apart has 19.
    expect(readingsOf(short)).toEqual([1500]);
    expect(short.lineside?.map(({ name }) => name)).toEqual(['Gate']);
    expect(readingsOf(layStraightOn(surveyed(), 'line', -300))).toEqual([1500, 5600, 20]);
  });
});

describe('supports spread at another distance', () => {
  it('stay as many as a survey has numbers for', () => {
    // 6000 mm: 20 supports at 315 mm, 19 at 320 mm.
    expect(parseScene(setSupportsEvery(surveyed(), 'line', 315)).ok).toBe(true);
    expect(() => setSupportsEvery(surveyed(), 'line', 320)).toThrow(
      'The survey “First survey” names support 20 of Line; that leaves 19.',
    );
  });
});
