import { describe, expect, it } from 'vitest';
import { createInProcessHost } from '../../../src/sim/index.ts';
import { createProbePool } from '../../../src/sim/study/index.ts';
import { createInProcessSurveyHost } from '../../../src/sim/survey/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { createSurveys, type Tilt, type TiltPort, type TiltTrouble } from '../../../src/state/survey/index.ts';
import { bundledScene } from '../../scene/sample.ts';
import { heldHost, resultOf } from '../fakeHost.ts';

const { surveys: _surveys, ...spiral } = bundledScene('08-harebell-spiral.json');
const degree = Math.PI / 180;

/** A sensor that lies as it is told for as long as it is told, looked at twenty times a second. */
function sensor(trouble: TiltTrouble | null = null) {
  let tell: ((tilt: Tilt) => void) | null = null;
  let time = 0;
  const port: TiltPort = {
    async start(to) {
      tell = to;
      return trouble;
    },
    stop() {
      tell = null;
    },
  };
  const lie = (heading: number, pitch: number, seconds: number, shake = 0) => {
    for (let k = 0; k < seconds * 20; k++) {
      time += 0.05;
      tell?.({ time, alpha: heading * degree, beta: (pitch + shake * (k % 2)) * degree });
    }
  };
  return { port, lie };
}

async function opened(trouble: TiltTrouble | null = null) {
  const { host: runs, asked } = heldHost();
  const session = createSession(runs);
  const open = session.actions.openScene(spiral);
  await asked[0].answer(resultOf('up'));
  await open;
  session.actions.setChapter('survey');
  const { port, lie } = sensor(trouble);
  const pool = createProbePool([createInProcessHost()]);
  const surveys = createSurveys(session, createInProcessSurveyHost(), pool, port);
  const taken = () => session.session.getState().scene?.surveys?.[0];
  surveys.actions.begin('By phone');
  surveys.actions.startWalk('grade');
  await surveys.actions.startPhone();
  return { ...surveys, lie, taken, phone: () => surveys.survey.getState().phone };
}

/** A phone that shows 0.7° on the level. */
const bias = 0.7;

async function calibrated() {
  const all = await opened();
  all.lie(20, 0.3 + bias, 1);
  all.actions.readWhenStill('first-face');
  all.lie(20, 0.3 + bias, 2);
  all.actions.readWhenStill('second-face');
  all.lie(200, -0.3 + bias, 2);
  return all;
}

describe('the phone as the level', () => {
  it('says why it cannot be, and takes no reading', async () => {
    const { phone, lie, taken } = await opened('insecure');
    expect(phone()).toMatchObject({ state: 'off', trouble: 'insecure' });
    lie(0, 1, 3);
    expect(taken()).toBeUndefined();
  });

  it('is calibrated by two faces on a place that is not level', async () => {
    const { phone } = await calibrated();
    expect(phone().waits).toBeNull();
    // tan 0.7° = 1.222 %.
    expect(phone().calibration?.bias).toBeCloseTo(0.01222, 5);
    // Two readings to 0.1°: 0.0504 % each, and half their root sum of squares.
    expect(phone().calibration?.deviation).toBeCloseTo(0.000356, 6);
  });

  it('sees that it was not turned, and waits for the second face still', async () => {
    const { actions, lie, phone } = await opened();
    actions.readWhenStill('first-face');
    lie(20, 1, 2);
    actions.readWhenStill('second-face');
    lie(25, 1, 2);
    expect(phone().calibration).toBeNull();
    expect(phone().firstFace).not.toBeNull();
    expect(phone().said).toMatch(/turn it end for end/);
  });

  it('takes a reading when the hand is off, less its bias, and goes on', async () => {
    const { actions, lie, phone, taken, survey } = await calibrated();
    actions.readWhenStill('reading');
    lie(90, 2 + bias, 3, 1);
    expect(taken()).toBeUndefined();
    lie(90, 2 + bias, 2);
    // tan 2° = 3.492 %.
    expect(taken()?.readings).toEqual([
      expect.objectContaining({ gradePercent: 3.492, baseMm: 150, instrument: 'phone' }),
    ]);
    expect(survey.getState().walk?.stop).toBe(1);
    // Nothing more without another press, however long it lies.
    lie(90, 2 + bias, 5);
    expect(taken()?.readings).toHaveLength(1);
    expect(phone().waits).toBeNull();
  });

  it('gives the grade in the direction of the track when its top end points back', async () => {
    const { actions, lie, taken } = await calibrated();
    actions.setWalk({ turned: true });
    actions.readWhenStill('reading');
    lie(270, -2 + bias, 2);
    expect(taken()?.readings).toEqual([expect.objectContaining({ gradePercent: 3.492, turned: true })]);
  });

  it('reads across the rails as well, as an instrument of its own', async () => {
    const { actions, lie, taken, survey } = await calibrated();
    actions.readWhenStill('reading');
    lie(90, 2 + bias, 2);
    actions.startWalk('cross');
    actions.readWhenStill('reading');
    lie(180, 1 + bias, 2);
    // Top end to the left rail: what rises to the left falls to the right.
    actions.setWalk({ turned: true });
    actions.readWhenStill('reading');
    lie(0, 1 + bias, 2);
    // tan 1° = 1.746 %.
    expect(taken()?.readings.slice(1)).toEqual([
      { kind: 'cross', support: 1, crossPercent: 1.746, instrument: 'phone-across' },
      { kind: 'cross', support: 2, crossPercent: -1.746, instrument: 'phone-across' },
    ]);
    expect(taken()?.instruments?.find(({ id }) => id === 'phone-across')).toMatchObject({
      reads: 'cross',
      errorPercent: 0.3,
      stepDeg: 0.1,
    });
    expect(survey.getState().phone.instruments).toEqual({ grade: 'phone', cross: 'phone-across' });
  });

  it('takes nothing that a level does not read', async () => {
    const { actions, lie, taken, phone } = await calibrated();
    actions.startWalk('height');
    actions.readWhenStill('reading');
    lie(90, bias, 2);
    expect(phone().said).toMatch(/reads nothing else/);
    expect(taken()).toBeUndefined();
  });

  it('leaves the level of the person what it was, and is another instrument when calibrated anew', async () => {
    const { actions, lie, taken } = await calibrated();
    actions.readWhenStill('reading');
    lie(90, 2 + bias, 2);
    actions.calibrateAnew();
    actions.readWhenStill('first-face');
    lie(20, bias, 2);
    actions.readWhenStill('second-face');
    lie(200, bias, 2);
    actions.readWhenStill('reading');
    lie(90, 2 + bias, 2);
    actions.endPhone();
    expect(actions.enter('2.3')).toBeNull();
    expect(taken()?.instruments?.map(({ id }) => id)).toEqual(['level', 'phone', 'phone-2']);
    expect(taken()?.readings.map(({ instrument }) => instrument)).toEqual(['phone', 'phone-2', undefined]);
  });
});
