import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import { placedSupports, type Scene, type SceneReading } from '../../../src/scene/index.ts';
import { compileScene, compileTrial } from '../../../src/sim/index.ts';
import { asBuiltScene, surveyScene } from '../../../src/sim/survey/index.ts';
import { sample, sceneOf } from '../../scene/sample.ts';

const turnout = { hand: 'left', radiusMm: 900, gaugeMm: 16.5, crossing: { oneIn: 6 }, frontMm: 20, heelMm: 40 };

const { track: _track, towards: _towards, ...trial } = sample.trials[0];

/** A ramp off the sample's line, with supports every 150 mm from its front joint: the first of them stand under the turnout. */
const planned = sceneOf({
  ...sample,
  tracks: [
    sample.tracks[0],
    {
      id: 'ramp',
      name: 'Ramp',
      start: { branchOf: 'line', atMm: 500, towards: 'end', turnout },
      alignment: [{ kind: 'straight', lengthMm: 3000 }],
      profile: [
        { atMm: 600, heightMm: 0, verticalCurveLengthMm: 200 },
        { at: { endOf: 'track' }, heightMm: 48 },
      ],
      supports: { everyMm: 150 },
    },
  ],
  trials: [
    {
      ...trial,
      startMm: 700,
      finishMm: 3000,
      route: [
        { track: 'line', towards: 'end' },
        { track: 'ramp', towards: 'end' },
      ],
    },
  ],
});

const count = placedSupports(planned.tracks[1]).length;
const rampOf = (scene: Scene) => compileScene(scene).tracks.get('ramp')!;

/** Departures, m, of the ramp's supports: number (from 1) and mm. */
const standing = (number: number, mm: number) =>
  Array.from({ length: count }, (_, support) => (support === number - 1 ? mm / 1000 : 0));

/** What a level of 120 mm and a rule against the datum show on a line built so, to the tenth. */
function readOff(built: Scene, heightsAt: readonly number[]): SceneReading[] {
  const track = rampOf(built);
  const z = (mm: number): number => trackPoint(track, mm / 1000).z * 1000;
  const tenth = (value: number): number => Math.round(value * 10) / 10;
  const grades = Array.from({ length: count - 4 }, (_, i): SceneReading => {
    const atMm = (i + 3) * 150 + 75;
    return { kind: 'grade', atMm, baseMm: 120, gradePercent: tenth(((z(atMm + 60) - z(atMm - 60)) / 120) * 100) };
  });
  const heights = heightsAt.map(
    (support): SceneReading => ({ kind: 'height', support, heightMm: tenth(z((support - 1) * 150)) }),
  );
  return [...grades, ...heights];
}

const surveyed = (built: Scene): Scene =>
  sceneOf({
    ...planned,
    surveys: [
      {
        id: 'first',
        name: 'First',
        track: 'ramp',
        readings: readOff(built, [1, 2, 5, 7, 9, 10, 11, 12, 14, 16, 18, 21]),
      },
    ],
  });

describe('a survey on a branch', () => {
  it('counts supports as the builder does, those under the turnout too', async () => {
    const scene = surveyed(asBuiltScene(planned, 'ramp', standing(11, 2.5)));
    const { survey, mend } = await surveyScene(scene);
    expect(survey.input.supports.map((s) => Math.round(s * 1000))).toEqual(
      placedSupports(scene.tracks[1]).map(({ atMm }) => atMm),
    );
    expect(survey.explanation.supports.map(({ support }) => support + 1)).toEqual([11]);
    expect(survey.explanation.departures[10] * 1000).toBeCloseTo(2.5, 0);
    expect(mend).toMatchObject({ outcome: 'mended', steps: [{ support: 10 }] });
  });

  it('takes supports under the turnout as the main track has them, and never touches one', async () => {
    const { survey } = await surveyScene(surveyed(asBuiltScene(planned, 'ramp', standing(11, 2.5))));
    const heel = compileScene(planned).tracks.get('ramp')!.spec.profile.strip!.supports[0].chainage;
    const under = survey.input.supports.flatMap((s, support) => (s < heel ? [support] : []));
    expect(under.length).toBeGreaterThan(1);
    expect(survey.input.fixed).toEqual(under);
    for (const support of under)
      expect(survey.estimate.supports[support]).toMatchObject({ departure: 0, deviation: 0 });
  });

  it('where the main track was built high, the branch starts as high: nothing of its own is off', async () => {
    const high = Array.from(placedSupports(planned.tracks[0]), () => 0.003);
    const main = asBuiltScene(planned, 'line', high);
    const { surveys } = surveyed(main);
    const { survey } = await surveyScene({ ...main, ...(surveys && { surveys }) });
    // The plan of the ramp begins at the turnout's heel, wherever that lies.
    expect(survey.explanation).toMatchObject({ supports: [], noiseExplains: true });
  });

  it('a perfect one shows nothing', async () => {
    const { survey, mend } = await surveyScene(surveyed(planned));
    expect(survey.explanation).toMatchObject({ supports: [], slips: [], noiseExplains: true });
    expect(mend.outcome).toBe('nothing-to-mend');
  });

  it('its heights go into the runs of routes over it, at the support that was found', async () => {
    const scene = surveyed(asBuiltScene(planned, 'ramp', standing(11, 2.5)));
    const { survey } = await surveyScene(scene);
    const way = (of: Scene) => compileTrial(compileScene(of), 'up').path;
    const built = way(asBuiltScene(scene, 'ramp', survey.explanation.departures));
    const plan = way(scene);
    const start = built.legs?.[1]?.start ?? Number.NaN;
    const gains = Array.from({ length: count }, (_, support) => {
      const at = start + support * 0.15;
      return Math.round((trackPoint(built.track, at).z - trackPoint(plan.track, at).z) * 1e4) / 10;
    });
    // The strip bends between supports; at its supports it stands where they do.
    expect(gains.flatMap((mm, support) => (mm === 0 ? [] : [support + 1]))).toEqual([11]);
    expect(gains[10]).toBeCloseTo(2.5, 0);
  });
});
