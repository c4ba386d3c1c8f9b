import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compareSurveys } from '../../../src/core/survey/index.ts';
import { parseScene, placedSupports, type Scene } from '../../../src/scene/index.ts';
import { compileScene, compileTrial, runTrial } from '../../../src/sim/index.ts';
import {
  asBuiltScene,
  drawnScenes,
  ReadingsProblem,
  SurveyProblem,
  surveyScene,
} from '../../../src/sim/survey/index.ts';

function bundled(name: string): Scene {
  const parsed = parseScene(readFileSync(new URL(`../../../scenes/${name}.json`, import.meta.url), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.scene;
}

const harebell = bundled('08-harebell-spiral');
const foxglove = bundled('09-foxglove-ramp');

describe('the scenes that come with a survey', () => {
  it('forty readings say: turn nuts 6 and 17', async () => {
    const { survey, mend } = await surveyScene(harebell);
    expect(survey.input.readings).toHaveLength(40);
    expect(survey.explanation.slips).toEqual([]);
    expect(mend).toMatchObject({
      outcome: 'mended',
      steps: [{ support: 5 }, { support: 16 }],
      proof: { optimal: true, value: 2 },
    });
  });

  it('a true ramp read to a sixteenth: noise, and no shim', async () => {
    const { survey, mend } = await surveyScene(foxglove);
    expect(survey.explanation).toMatchObject({ noiseExplains: true, supports: [], slips: [] });
    expect(mend).toMatchObject({ outcome: 'nothing-to-mend', reason: 'noise' });
  });

  it('any objective touches the same two, and the least change is less than setting them right', async () => {
    const sums = new Map<string, number>();
    for (const objective of ['fewest', 'flattest', 'least'] as const) {
      const { mend } = await surveyScene(harebell, { objective });
      if (mend.outcome !== 'mended') throw new Error(mend.outcome);
      expect(mend.steps.map(({ support }) => support)).toEqual([5, 16]);
      sums.set(
        objective,
        mend.steps.reduce((sum, { change }) => sum + Math.abs(change), 0),
      );
    }
    expect(sums.get('least') ?? 1).toBeLessThan((sums.get('fewest') ?? 0) - 0.0005);
  });
});

/** The outcome of the first trial on a scene, and the smallest margin of coupling heads in its height. */
async function trialOn(scene: Scene): Promise<{ outcome: string; heads: number }> {
  const { run, risks } = await runTrial(compileTrial(compileScene(scene), 'up'));
  const heads = risks.find(({ risk }) => risk === 'parting')?.worst?.margin ?? Number.NaN;
  return { outcome: run.outcome, heads };
}

describe('as built', () => {
  it('trains run before the work, after it, and on drawn lines; the heads have more to spare after', async () => {
    const { survey, mend } = await surveyScene(harebell);
    if (mend.outcome !== 'mended') throw new Error(mend.outcome);
    const before = await trialOn(asBuiltScene(harebell, 'spiral', survey.explanation.departures));
    const after = await trialOn(asBuiltScene(harebell, 'spiral', mend.departures));
    const [drawn] = drawnScenes(harebell, 'spiral', survey, 1, 7);
    expect([before.outcome, after.outcome, (await trialOn(drawn)).outcome]).toEqual(['arrived', 'arrived', 'arrived']);
    expect(after.heads).toBeGreaterThan(before.heads);
  });

  it('supports stand off by what was estimated, whatever the scene said before', async () => {
    const { survey } = await surveyScene(harebell);
    const built = asBuiltScene(harebell, 'spiral', survey.explanation.departures);
    const offs = placedSupports(built.tracks[0]).map(({ offMm }) => offMm);
    expect(offs.flatMap((off, i) => (off === 0 ? [] : [i + 1]))).toEqual([6, 17]);
    expect(offs[5]).toBeCloseTo(2.8, 0);
    expect(parseScene(built).ok).toBe(true);
    expect(asBuiltScene(built, 'spiral', new Float64Array(25))).toEqual(
      asBuiltScene(harebell, 'spiral', new Float64Array(25)),
    );
  });

  it('drawn lines are scenes that a seed decides', async () => {
    const { survey } = await surveyScene(harebell);
    const drawn = drawnScenes(harebell, 'spiral', survey, 3, 7);
    expect(drawn).toEqual(drawnScenes(harebell, 'spiral', survey, 3, 7));
    expect(drawn[0]).not.toEqual(drawn[1]);
    for (const scene of drawn) {
      expect(parseScene(scene).ok).toBe(true);
      expect(placedSupports(scene.tracks[0])[5].offMm).toBeGreaterThan(2);
    }
  });
});

it('two surveys compared: the two nuts moved, the rest did not', async () => {
  const before = (await surveyScene(harebell)).survey;
  const [own] = harebell.surveys ?? [];
  const mended = {
    ...own,
    id: 'second',
    readings: own.readings.map((reading) =>
      reading.kind === 'height' && reading.support === 6
        ? { ...reading, heightMm: reading.heightMm - 2.8 }
        : reading.kind === 'height' && reading.support === 17
          ? { ...reading, heightMm: reading.heightMm + 2.2 }
          : reading.kind === 'grade'
            ? { ...reading, gradePercent: 2.2 + (reading.turned === true ? -0.1 : 0.1) }
            : reading,
    ),
  };
  const after = (await surveyScene({ ...harebell, surveys: [mended] })).survey;
  const changed = compareSurveys(before, after).filter(({ significant }) => significant);
  expect(changed.map(({ support, change }) => [support + 1, Math.sign(change)])).toEqual([
    [6, -1],
    [17, 1],
  ]);
  expect(() => compareSurveys(before, { ...after, input: { ...after.input, supports: [0, 1] } })).toThrow(
    /supports are the same/,
  );
});

describe('a choice that leads to nothing is told', () => {
  it.each([
    [{ survey: 'tenth' }, /no survey "tenth". It has: first/],
    [{ track: 'moon' }, /no survey of track "moon"/],
    [{ track: 'moon', readings: 'support;height mm\n1;3' }, /no track "moon". It has: spiral/],
  ])('%j', async (choice, message) => {
    await expect(surveyScene(harebell, choice)).rejects.toThrow(message);
    await expect(surveyScene(harebell, choice)).rejects.toBeInstanceOf(SurveyProblem);
  });

  it('lines of a table', async () => {
    await expect(surveyScene(harebell, { readings: 'support;height mm\nx;3' })).rejects.toBeInstanceOf(ReadingsProblem);
    await expect(surveyScene(harebell, { readings: 'support;height mm\n26;3' })).rejects.toThrow(
      /line 2: support 26 is not on this track/,
    );
  });
});

describe('a survey in a scene file', () => {
  const problems = (change: (survey: NonNullable<Scene['surveys']>[number]) => unknown): string[] => {
    const [own] = harebell.surveys ?? [];
    const parsed = parseScene({ ...harebell, surveys: [change(structuredClone(own))] });
    return parsed.ok ? [] : parsed.problems.map(({ path, found }) => `${path}: ${found}`);
  };

  it.each([
    [
      'a track that is not there',
      (survey: object) => ({ ...survey, track: 'moon' }),
      'surveys[0].track: "moon", which is not in this file',
    ],
    ['a support beyond the last', (survey: object) => ({ ...survey, fixed: [26] }), 'surveys[0].fixed[0]: support 26'],
    [
      'an instrument that reads something else',
      (survey: object) => ({ ...survey, readings: [{ kind: 'height', support: 1, heightMm: 1, instrument: 'level' }] }),
      'surveys[0].readings[0].instrument: "level", which is no instrument of this survey that reads a height',
    ],
    [
      'a place past the end',
      (survey: object) => ({ ...survey, readings: [{ kind: 'height', atMm: 90_000, heightMm: 1 }] }),
      'surveys[0].readings[0].atMm: chainage 90000 mm',
    ],
  ])('with %s is refused', (_, change, message) => {
    expect(problems(change)).toEqual([message]);
  });

  it('with both kinds of unit, or both adjusters, is refused', () => {
    const both = { kind: 'grade', support: 1, baseMm: 300, gradePercent: 2, gradeDeg: 1 };
    expect(problems((survey) => ({ ...survey, readings: [both] }))).toHaveLength(1);
    expect(problems((survey) => ({ ...survey, mend: { thread: 'M8', packingMm: [1] } }))).toHaveLength(1);
  });
});
