import { describe, expect, it } from 'vitest';
import type { Scene } from '../../../src/scene/index.ts';
import { createInProcessHost } from '../../../src/sim/index.ts';
import { createProbePool } from '../../../src/sim/study/index.ts';
import { createInProcessSurveyHost, type SurveyHost } from '../../../src/sim/survey/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { createSurveys } from '../../../src/state/survey/index.ts';
import { bundledScene } from '../../scene/sample.ts';
import { heldHost, resultOf, settle } from '../fakeHost.ts';

const spiral = bundledScene('08-harebell-spiral.json');

/** The spiral open in the chapter, with its trial solved by a host that answers at once and counts. */
async function opened(scene: Scene, host: SurveyHost = createInProcessSurveyHost()) {
  const { host: runs, asked } = heldHost();
  const session = createSession(runs);
  const open = session.actions.openScene(scene);
  await asked[0].answer(resultOf('up'));
  await open;
  session.actions.setChapter('survey');
  const surveys = createSurveys(session, host, createProbePool([createInProcessHost()]));
  const now = (): Scene => {
    const present = session.session.getState().scene;
    if (present === null) throw new Error('No scene is open');
    return present;
  };
  const worked = async () => {
    for (let k = 0; k < 400 && (surveys.survey.getState().worked === null || surveys.survey.getState().working); k++) {
      await new Promise((resolve) => setTimeout(resolve, 25));
    }
    return surveys.survey.getState().worked;
  };
  return { session, asked, ...surveys, now, worked };
}

const withoutSurveys = ({ surveys: _surveys, ...scene }: Scene): Scene => scene;

describe('a survey in the chapter', () => {
  it('is worked out when the chapter opens, and pointed at on stage and band', async () => {
    const { worked, session } = await opened(spiral);
    const answer = await worked();
    expect(answer?.survey.explanation.supports.map(({ support }) => support + 1).sort((a, b) => a - b)).toEqual([
      6, 17,
    ]);
    const { surveyed } = session.session.getState();
    expect(surveyed?.pointed).toEqual([5, 16]);
    expect(surveyed?.supports.filter(({ wrong }) => wrong)).toHaveLength(2);
    session.actions.setChapter('trial');
    expect(session.session.getState().surveyed).toBeNull();
  });

  it('is mended, put into the railway in one step, and taken out again with one', async () => {
    const { worked, survey, actions, session, now } = await opened(spiral);
    await worked();
    await actions.mend();
    const mend = survey.getState().mended?.mend;
    if (mend?.outcome !== 'mended') throw new Error('It should have found what to turn.');
    expect(mend.steps.map(({ support }) => support + 1).sort((a, b) => a - b)).toEqual([6, 17]);
    const before = now();
    const put = actions.putEstimate();
    await settle();
    const offs = (scene: Scene) => {
      const supports = scene.tracks[0].supports;
      return supports !== undefined && 'everyMm' in supports ? (supports.off ?? []).map(({ support }) => support) : [];
    };
    expect(offs(now())).toEqual([6, 17]);
    // The mending on show is that of the readings: how the scene says the line stands is no part of it.
    expect(survey.getState().mended?.mend).toBe(mend);
    session.actions.cancel();
    await Promise.race([put, settle()]);
    void session.actions.undo();
    await settle();
    expect(offs(now())).toEqual([]);
    expect(now().tracks).toEqual(before.tracks);
  });
});

describe('readings taken one after another', () => {
  it('make a new survey with the first, go from place to place, and solve no trial again', async () => {
    const { actions, survey, session, now, asked } = await opened(withoutSurveys(spiral));
    actions.begin('With the level');
    expect(now().surveys).toBeUndefined();
    actions.startWalk('grade');
    expect(actions.enter('2.3')).toBeNull();
    expect(actions.enter('1.3°')).toBeNull();
    const [own] = now().surveys ?? [];
    expect(own.name).toBe('With the level');
    // Supports at 400, 800, 1200 mm: between them at 600 and 1000.
    expect(own.readings.map((reading) => ('atMm' in reading ? reading.atMm : null))).toEqual([600, 1000]);
    expect(own.readings[0]).toMatchObject({ kind: 'grade', baseMm: 300, gradePercent: 2.3 });
    // tan 1.3° = 0.022693…
    expect(own.readings[1]).toMatchObject({ gradePercent: expect.closeTo(2.2693, 4) });
    expect(survey.getState().walk?.stop).toBe(2);
    expect(asked).toHaveLength(1);
    expect(session.session.getState().compiled?.scene).toBe(now());
  });

  it('refuse what is no reading, and stay at the place', async () => {
    const { actions, survey, now } = await opened(withoutSurveys(spiral));
    actions.begin('Laser');
    actions.startWalk('height', 3);
    expect(actions.enter('twelve')).toMatch(/Write a length/);
    expect(survey.getState().walk?.stop).toBe(3);
    expect(now().surveys).toBeUndefined();
    expect(survey.getState().draft?.name).toBe('Laser');
    expect(actions.enter('35.5')).toBeNull();
    expect(now().surveys?.[0].readings).toEqual([{ kind: 'height', support: 4, heightMm: 35.5 }]);
  });

  it('are undone one by one, and the walk stands where the last was taken', async () => {
    const { actions, survey, now } = await opened(withoutSurveys(spiral));
    actions.begin('Laser');
    actions.startWalk('height');
    for (const text of ['8.5', '17.5', '26.5']) actions.enter(text);
    actions.setWalk({ stride: 2 });
    actions.takeBack();
    await settle();
    expect(now().surveys?.[0].readings).toHaveLength(2);
    expect(survey.getState().walk).toMatchObject({ stop: 2, taken: [{ stop: 0 }, { stop: 1 }] });
    actions.enter('26');
    expect(now().surveys?.[0].readings[2]).toEqual({ kind: 'height', support: 3, heightMm: 26 });
    expect(survey.getState().walk?.stop).toBe(4);
  });
});

describe('a table of readings', () => {
  it('is taken line by line, with what it says of its instruments', async () => {
    const { actions, now } = await opened(withoutSurveys(spiral));
    actions.begin('Pasted');
    actions.setTable(
      'base = 300 mm\nlevel step = 0.2 %\nsupport; grade %; turned %; height mm\n6; 2.9; 2.7; 55.5\n7; x;;\n',
    );
    expect(actions.readTable('support; height mm\n6; x').problems[0].line).toBe(2);
    expect(actions.takeTable()).toBeNull();
    const [own] = now().surveys ?? [];
    expect(own.readings).toEqual([
      { kind: 'grade', support: 6, baseMm: 300, gradePercent: 2.9 },
      { kind: 'grade', support: 6, baseMm: 300, gradePercent: 2.7, turned: true },
      { kind: 'height', support: 6, heightMm: 55.5 },
    ]);
    expect(own.instruments?.find(({ reads }) => reads === 'grade')?.stepPercent).toBe(0.2);
  });

  it('says why where the scene cannot have it', async () => {
    const { actions, now } = await opened(withoutSurveys(spiral));
    actions.begin('Too far');
    actions.setTable('support; height mm\n99; 10');
    expect(actions.takeTable()).toMatch(/99/);
    expect(now().surveys).toBeUndefined();
  });
});

describe('the railway with readings', () => {
  it('runs as before: nothing is solved again until a support stands elsewhere', async () => {
    const { actions, session, asked, now, worked } = await opened(spiral);
    await worked();
    actions.rename('Another name');
    expect(now().surveys?.[0].name).toBe('Another name');
    expect(session.session.getState().progress).toBeNull();
    await session.actions.undo();
    expect(now().surveys?.[0].name).toBe('After the deck was hung on its rods');
    expect(asked).toHaveLength(1);
    void actions.putEstimate();
    await settle();
    expect(asked).toHaveLength(2);
    expect(asked[1].scene.tracks[0].supports).toMatchObject({ off: [{ support: 6 }, { support: 17 }] });
  });
});

describe('a host that is slow', () => {
  it('is called off when its mending is stopped, and the readings stay worked out', async () => {
    const { worked } = { worked: createInProcessSurveyHost() };
    let calledOff = false;
    const host: SurveyHost = {
      work: (question, signal) =>
        question.objective === null
          ? worked.work(question, signal)
          : new Promise((_, reject) => {
              signal?.addEventListener('abort', () => {
                calledOff = true;
                reject(new DOMException('Called off', 'AbortError'));
              });
            }),
      dispose: () => {},
    };
    const { actions, survey, worked: ready } = await opened(spiral, host);
    await ready();
    const mending = actions.mend();
    expect(survey.getState().mending).toBe(true);
    actions.stop();
    await mending;
    expect(calledOff).toBe(true);
    expect(survey.getState()).toMatchObject({ mending: false, mended: null, problem: null });
    expect(survey.getState().worked).not.toBeNull();
  });
});
