import {
  faceOf,
  lessTilt,
  longEdge,
  reversal,
  steadiness,
  stillTime,
  type TiltSample,
  usualInstruments,
} from '../../core/survey/index.ts';
import { formatGrade } from '../../core/units/index.ts';
import { newId } from '../../scene/index.ts';
import type { SurveyActions } from './actions.ts';
import type { SurveyDesk } from './desk.ts';
import type { TiltPort } from './tiltPort.ts';
import { isByLevel, tidy } from './tools.ts';
import type { Phone, PhoneTask } from './types.ts';
import { takeReading } from './walking.ts';

/** The figures on show change this seldom, s: faster cannot be read. */
const shownEvery = 0.2;

/**
 * How well a phone lies on rails, apart from its rounding, per cent: along them 0.15 mm over its own 150 mm (assumption), across them as any
 * level that rocks on two heads.
 */
const phoneErrorPercent = { grade: 0.1, cross: tidy(usualInstruments.cross.deviation * 100) } as const;

/** Smallest step of the angle that browsers hand on, degrees. */
const phoneStepDeg = 0.1;

/** The phone as the level: calibrated by reversal, read when it lies still. */
export function levellingActions(
  desk: SurveyDesk,
  tilt: TiltPort,
): Pick<SurveyActions, 'startPhone' | 'endPhone' | 'setPhoneBase' | 'readWhenStill' | 'calibrateAnew'> {
  const { survey } = desk;
  let samples: TiltSample[] = [];
  const setPhone = (change: Partial<Phone>) => survey.setState(({ phone }) => ({ phone: { ...phone, ...change } }));

  const hear = ({ time, alpha, beta }: { readonly time: number; readonly alpha: number; readonly beta: number }) => {
    const edge = longEdge(alpha, beta);
    const { phone } = survey.getState();
    if (edge === null) {
      samples = [];
      if (phone.steady !== null) setPhone({ steady: null });
      return;
    }
    const shownAt = samples.at(-1);
    samples = [...samples.filter((sample) => time - sample.time <= stillTime), { time, ...edge }];
    const steady = steadiness(samples);
    if (steady?.still && phone.waits !== null) {
      samples = [];
      const problem = take(phone.waits, steady);
      setPhone({ steady, waits: null, said: problem });
    } else if (shownAt === undefined || Math.floor(time / shownEvery) !== Math.floor(shownAt.time / shownEvery)) {
      setPhone({ steady });
    }
  };

  function take(task: PhoneTask, steady: NonNullable<Phone['steady']>): string | null {
    const face = faceOf(steady);
    const { firstFace } = survey.getState().phone;
    if (task === 'first-face') {
      setPhone({ firstFace: face, calibration: null });
      return null;
    }
    if (task === 'second-face') {
      if (firstFace === null) return 'The first face comes first.';
      const { turned, bias, deviation } = reversal(firstFace, face);
      if (!turned) return 'It points the same way as before: turn it end for end on the same spot.';
      setPhone({ firstFace: null, calibration: { bias, deviation }, instruments: {} });
      return null;
    }
    return takePhoneReading(desk, face.grade);
  }

  return {
    async startPhone() {
      samples = [];
      setPhone({ state: 'asking', trouble: null, said: null });
      const trouble = await tilt.start(hear);
      // Put away before it had said anything: then it stays away.
      if (survey.getState().phone.state !== 'asking') return;
      setPhone({ state: trouble === null ? 'on' : 'off', trouble });
    },
    endPhone() {
      tilt.stop();
      setPhone({ state: 'off', trouble: null, steady: null, waits: null, firstFace: null, said: null });
    },
    setPhoneBase: (baseMm) => setPhone({ baseMm }),
    readWhenStill(task) {
      // What was seen before the hands went off does not count.
      samples = [];
      setPhone({ waits: task, steady: null, said: null });
    },
    calibrateAnew: () => setPhone({ calibration: null, firstFace: null, instruments: {}, said: null }),
  };
}

/** The grade of a phone's long edge in the direction of the track, or from the left rail to the right one, as far as it is calibrated. */
export function phoneGrade(tilt: number, { calibration }: Pick<Phone, 'calibration'>, turned: boolean): number {
  const grade = lessTilt(tilt, calibration?.bias ?? 0);
  return turned ? -grade : grade;
}

/** Takes the grade of the phone's long edge as a reading at the place of the walk; null, or why not. */
function takePhoneReading(desk: SurveyDesk, tilt: number): string | null {
  const { walk, tools, phone } = desk.survey.getState();
  const { calibration } = phone;
  if (walk === null || calibration === null) return 'The phone has to be calibrated first.';
  const { kind } = walk;
  if (!isByLevel(kind)) return 'A phone is a level and reads nothing else.';
  // A thousandth of a per cent: what is finer is noise.
  const grade = Math.round(phoneGrade(tilt, phone, walk.turned) * 1e5) / 1e5;
  const instruments = desk.chosenSurvey()?.instruments ?? [];
  // Every calibration leaves an error of its own, that only its readings share.
  const name = kind === 'cross' ? 'phone-across' : 'phone';
  const id = phone.instruments[kind] ?? newId(instruments, name);
  const instrument = {
    id,
    reads: kind,
    errorPercent: phoneErrorPercent[kind],
    stepDeg: phoneStepDeg,
    zeroPercent: tidy(Math.round(calibration.deviation * 1e5) / 1e3),
  };
  const tool = { ...tools[kind], baseMm: phone.baseMm };
  const words = formatGrade(grade, { form: tool.unit, digits: 2 });
  const refused = takeReading(desk, grade, words, { instrument, tool });
  if (refused === null) {
    desk.survey.setState(({ phone: now }) => ({ phone: { ...now, instruments: { ...now.instruments, [kind]: id } } }));
  }
  return refused;
}
