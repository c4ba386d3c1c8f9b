import { type Greatest, greatestWhole, type StudyHooks } from '../../core/study/index.ts';
import { parseScene, type Scene, type SceneTrial, trainLength, trainPlaces } from '../../scene/index.ts';
import type { ProbeBy } from './sweep.ts';
import type { Exactness, Probe } from './types.ts';

/** Grades are told apart to this, per cent, and none above the most is asked about. */
const stepPercent = 0.01;
const mostPercent = 20;

/** Way the train has to make on the grade, beyond its own length at the start, mm; and the time it may take, s. */
const wayMm = 500;
const patienceS = 120;

export interface SteepestGrade extends Omit<Greatest, 'passes' | 'fails'> {
  /** The steepest even grade it starts and climbs on, per cent; null: none, not even level track. */
  readonly passesPercent: number | null;
  readonly failsPercent: number | null;
}

/**
 * The steepest even grade that the train of a trial starts on and climbs, by its own forces and its engine's: halved by the quasi-static pass to 0.01 %,
 * confirmed by full runs. Straight, or all in a curve of a radius, mm. The greatest order of the trial is given at once. Throws RangeError
 * when there is no such trial.
 */
export async function steepestGrade(
  scene: Scene,
  trialId: string,
  radiusMm: number | null,
  probe: ProbeBy,
  hooks: StudyHooks = {},
): Promise<SteepestGrade> {
  const ask = async (hundredths: number, exactness: Exactness): Promise<boolean> => {
    const ramp = rampScene(scene, trialId, hundredths * stepPercent, radiusMm);
    const found = await probe({ scene: ramp, settings: [], trialIds: [trialId], exactness });
    return found.ok && found.trials.every(({ outcome }) => outcome === 'arrived');
  };
  const { passes, fails, ...rest } = await greatestWhole(
    mostPercent / stepPercent,
    (hundredths) => ask(hundredths, 'steady'),
    (hundredths) => ask(hundredths, 'run'),
    hooks,
  );
  return {
    passesPercent: passes < 0 ? null : passes * stepPercent,
    failsPercent: fails === null ? null : fails * stepPercent,
    ...rest,
  };
}

/** What the train of a trial has to spare on one even grade, per cent. */
export interface GradePoint {
  readonly at: number;
  readonly probe: Probe;
}

/** How many grades a curve is drawn through, level track and its end included. */
const curvePoints = 9;

/**
 * The curve behind the answer: margins by the quasi-static pass on even grades from level track to `toPercent`, evenly apart, each told to `found` as it comes.
 */
export async function gradeCurve(
  scene: Scene,
  trialId: string,
  toPercent: number,
  probe: ProbeBy,
  found: (point: GradePoint) => void,
  hooks: StudyHooks = {},
): Promise<void> {
  for (let k = 0; k < curvePoints && !hooks.stopped?.(); k++) {
    const at = (toPercent * k) / (curvePoints - 1);
    const ramp = rampScene(scene, trialId, at, null);
    found({ at, probe: await probe({ scene: ramp, settings: [], trialIds: [trialId], exactness: 'steady' }) });
  }
}

/** A railway of one even grade with the train of a trial at its foot. */
function rampScene(scene: Scene, trialId: string, gradePercent: number, radiusMm: number | null): Scene {
  const trial = scene.trials.find(({ id }) => id === trialId);
  const train = scene.trains.find(({ id }) => id === trial?.train);
  if (trial === undefined || train === undefined) throw new RangeError(`The scene has no trial "${trialId}".`);
  const lengthMm = trainLength(trainPlaces(scene, train)) * 1e3;
  const wholeMm = 2 * lengthMm + 2 * wayMm;
  const bend = { kind: 'helix', radiusMm, turn: 'left', turns: wholeMm / (2 * Math.PI * (radiusMm ?? 1)) };
  const strongest = trial.orders.reduce((most, one) => (Math.abs(one.setting) > Math.abs(most.setting) ? one : most));
  const { startMm: _start, passers: _passers, route: _route, follows: _follows, stopS: _stop, ...own } = trial;
  const climb: SceneTrial = {
    ...own,
    track: 'ramp',
    towards: 'end',
    startMm: lengthMm + 10,
    finishMm: lengthMm + 10 + wayMm,
    timeLimitS: patienceS,
    orders: [{ atS: 0, setting: strongest.setting }],
  };
  const parsed = parseScene({
    ...scene,
    tracks: [
      {
        id: 'ramp',
        name: 'Ramp',
        start: { xMm: 0, yMm: 0, headingDeg: 0 },
        alignment: [radiusMm === null ? { kind: 'straight', lengthMm: wholeMm } : bend],
        profile: [
          { atMm: 0, heightMm: 0 },
          { at: { endOf: 'track' }, gradePercent },
        ],
      },
    ],
    trains: [train],
    trials: [climb],
    structures: [],
    lineside: [],
    variants: [],
    surveys: [],
    tour: [],
    opensWith: trialId,
  });
  if (parsed.ok) return parsed.scene;
  const [{ path, found, allowed }] = parsed.problems;
  throw new RangeError(`${path}: ${found}; allowed: ${allowed}`);
}
