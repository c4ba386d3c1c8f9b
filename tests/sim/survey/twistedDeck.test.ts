import { describe, expect, it } from 'vitest';
import { railCentres, trackPoint } from '../../../src/core/track/index.ts';
import type { Scene, SceneReading } from '../../../src/scene/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { asBuiltScene, drawnLines, leansOf, surveyScene } from '../../../src/sim/survey/index.ts';
import { sample, sceneOf } from '../../scene/sample.ts';
import { solve } from '../solved.ts';

/** A level line with a van of 100 mm wheelbase, read along and across every 150 mm. */
const planned = sceneOf({
  ...sample,
  tracks: [
    {
      id: 'line',
      name: 'Line',
      start: { xMm: 0, yMm: 0, headingDeg: 0 },
      alignment: [{ kind: 'straight', lengthMm: 3000 }],
      profile: [{ atMm: 0, heightMm: 0 }],
      supports: { everyMm: 150 },
    },
  ],
  stock: [
    sample.stock[0],
    { id: 'van', name: 'Van', kind: 'wagon', massG: 50, lengthMm: 150, wheelbaseMm: 100, coupling: 'bar', buffers: {} },
  ],
  trains: [{ id: 'train', name: 'Train', vehicles: [{ stock: 'engine' }, { stock: 'van', count: 2 }] }],
  trials: [{ ...sample.trials[0], startMm: 700, finishMm: 2800 }],
});

const gauge = planned.scale.gaugeMm / 1000;
const count = 21;

/** The deck with its right side high at one support and low at the next, as slopes in per cent. */
const twisted: Scene = {
  ...planned,
  tracks: [
    {
      ...planned.tracks[0],
      crossLevels: [
        { atMm: 1350, offPercent: 0 },
        { atMm: 1500, offPercent: 10 },
        { atMm: 1650, offPercent: -8 },
        { atMm: 1800, offPercent: 0 },
      ],
    },
  ],
};

/** A level with a zero error of a quarter of a per cent, read to the tenth, across the rails at every support of a deck built so. */
function readAcross(built: Scene): SceneReading[] {
  const track = compileScene(built).tracks.get('line')!;
  return Array.from({ length: count }, (_, i): SceneReading => {
    const slope = Math.tan(trackPoint(track, i * 0.15).cant) * 100 + 0.25;
    return { kind: 'cross', support: i + 1, crossPercent: Math.round(slope * 10) / 10 };
  });
}

const surveyed = (built: Scene): Scene =>
  sceneOf({
    ...planned,
    surveys: [
      {
        id: 'first',
        name: 'First',
        track: 'line',
        readings: [
          ...readAcross(built),
          ...Array.from({ length: count }, (_, i) => ({ kind: 'height', support: i + 1, heightMm: 0 })),
        ],
      },
    ],
  });

describe('a deck that was built twisted', () => {
  it('is what the trains run on: a wheel hangs as far as four points of the rail say', async () => {
    const scene = surveyed(twisted);
    const { survey, mend } = await surveyScene(scene);
    const leans = leansOf(survey);
    if (leans === null) throw new Error('It was read across.');
    // No height is off, so no nut of the middle has to turn.
    expect(mend).toMatchObject({ outcome: 'nothing-to-mend' });
    expect(survey.twist?.places.flatMap(({ wrong, support }) => (wrong ? [support] : []))).toEqual([10, 11]);
    const before = await solve(asBuiltScene(scene, 'line', survey.explanation.departures, leans.before), 'up');
    const lift = before.worst('axle-lift');
    // Four points under the wheels of a van across the steepest twist, from 10 % to -8 % in 150 mm: the fourth lies off the plane
    // through the other three by the difference of cross-levels, less the 0.5 mm that a frame takes up.
    const over = railCentres(gauge) * (Math.sin(Math.atan(0.1)) - Math.sin(Math.atan(-0.08)));
    expect(lift.value).toBeCloseTo((over * 0.1) / 0.15 - 0.0005, 4);
    expect(before.failing).toContain('axle-lift');
    // The zero error of the level is in every reading and in no twist: trains on the true deck fare the same.
    const truly = await solve(twisted, 'up');
    expect(lift.value).toBeCloseTo(truly.worst('axle-lift').value, 4);
  });

  it('lets a flange climb more easily, until the two places are set right', async () => {
    const scene = surveyed(twisted);
    const { survey } = await surveyScene(scene);
    const leans = leansOf(survey);
    if (leans === null) throw new Error('It was read across.');
    const { departures } = survey.explanation;
    const before = await solve(asBuiltScene(scene, 'line', departures, leans.before), 'up');
    const after = await solve(asBuiltScene(scene, 'line', departures, leans.after), 'up');
    expect(after.worst('wheel-climb').margin).toBeGreaterThan(before.worst('wheel-climb').margin + 0.1);
    expect(after.failing).not.toContain('axle-lift');
  });

  it('drawn lines lean too, and stand level where they were set right', async () => {
    const { survey } = await surveyScene(surveyed(twisted));
    const lines = drawnLines(survey, 40, 1);
    const at = (place: number) => lines.map(({ leans }) => leans?.before[place].lean ?? Number.NaN);
    const spread = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
    const tenth = at(10);
    expect(spread(tenth)).toBeGreaterThan(0.0005);
    expect(tenth.every((lean) => Math.abs(lean - 0.1) < 0.02)).toBe(true);
    expect(lines.every(({ leans }) => leans !== null && Math.abs(leans.after[10].lean) < 0.02)).toBe(true);
  });

  it('goes into the scene and out of a second survey, which is held against the plan', async () => {
    const scene = surveyed(twisted);
    const { survey } = await surveyScene(scene);
    const leans = leansOf(survey);
    const built = asBuiltScene(scene, 'line', survey.explanation.departures, leans?.before);
    expect(built.tracks[0].crossLevels?.[10].offPercent).toBeCloseTo(10, 0);
    const { survey: again } = await surveyScene(built);
    expect(again.twist?.places.map(({ departure }) => departure)).toEqual(
      survey.twist?.places.map(({ departure }) => departure),
    );
  });

  it('is nothing where nothing was read across: what the scene says of the deck stays', async () => {
    const along = sceneOf({
      ...twisted,
      surveys: [{ id: 'a', name: 'A', track: 'line', readings: [{ kind: 'height', support: 3, heightMm: 0 }] }],
    });
    const { survey } = await surveyScene(along);
    expect(leansOf(survey)).toBeNull();
    expect(drawnLines(survey, 1, 1)[0].leans).toBeNull();
    expect(asBuiltScene(along, 'line', survey.explanation.departures).tracks[0].crossLevels).toEqual(
      twisted.tracks[0].crossLevels,
    );
  });
});
