import { describe, expect, it } from 'vitest';
import { layStraightOn, parseScene, type Scene, setEasement, setSupportsEvery } from '../../../src/scene/index.ts';
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

describe('a survey of another track', () => {
  it('stays as it is while a track is made shorter', () => {
    const scene = surveyed();
    const other = { ...scene.tracks[0], id: 'other', name: 'Other' };
    const survey = { ...scene.surveys![0]!, id: 'second', track: 'other' };
    const two = sceneOf({ ...scene, tracks: [...scene.tracks, other], surveys: [...scene.surveys!, survey] });
    const short = layStraightOn(two, 'line', -500);
    expect(short.surveys?.find(({ id }) => id === 'second')).toEqual(two.surveys?.find(({ id }) => id === 'second'));
    expect(short.surveys?.find(({ id }) => id === 'first')?.readings).toHaveLength(1);
  });
});

describe('an easement that begins a track', () => {
  it('taken out leaves every place as far from the end of the track, but for what it was longer', () => {
    const scene = surveyed();
    const [line] = scene.tracks;
    const eased = sceneOf({
      ...scene,
      surveys: [],
      tracks: [
        {
          ...line!,
          alignment: [{ kind: 'transition', lengthMm: 300 }, ...line!.alignment.slice(1)],
          supports: undefined,
        },
      ].map(({ supports: _none, stripJoints: _joints, ...track }) => track),
      lineside: [
        { kind: 'portal', name: 'Arc', track: 'line', atMm: 800, widthMm: 80, heightMm: 90 },
        { kind: 'portal', name: 'Tail', track: 'line', atMm: 3800, widthMm: 80, heightMm: 90 },
      ],
      trials: [{ ...scene.trials[0]!, startMm: 900, finishMm: 3900 }],
    });
    // Of 300 + 1000 + 1000 + 2000 mm the arc after it gets half of its 300 back: 4150 are left.
    const bare = setEasement(eased, 'line', 0, 0);
    const made = bare.tracks[0]!.alignment;
    expect(made.map(({ kind }) => kind)).toEqual(['arc', 'arc', 'straight']);
    expect(made[0]).toMatchObject({ lengthMm: 1150 });
    expect(bare.lineside?.map((thing) => thing.kind === 'portal' && thing.atMm)).toEqual([
      // On the arc as far from its beginning as a share of it: half.
      expect.closeTo(575, 0),
      3650,
    ]);
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
