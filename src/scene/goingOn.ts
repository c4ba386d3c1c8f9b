import type { Scene } from './schema/schema.ts';
import type { SceneTrial } from './schema/trialSchema.ts';
import { acrossMm, sharedStretches, standingOn } from './sharedWay.ts';
import { trainLength, trainPlaces } from './trains.ts';
import { leadingEnds } from './trialEnds.ts';
import { wayLengthMm, wayOf } from './way.ts';

type Trials = Pick<Scene, 'trials'>;

/** The trials that come before one, the first of all first; without what is not there, and round no circle twice. */
export function trialsBefore({ trials }: Trials, trial: SceneTrial): readonly SceneTrial[] {
  const before: SceneTrial[] = [];
  let one = trials.find(({ id }) => id === trial.follows);
  while (one !== undefined && one !== trial && !before.includes(one)) {
    before.unshift(one);
    const { follows } = one;
    one = trials.find(({ id }) => id === follows);
  }
  return before;
}

/** Ids of the trials that hang together with one, itself among them: those before it, and all that go on from any of these. */
export function trialsTogether(scene: Trials, trialId: string): ReadonlySet<string> {
  const first = (trial: SceneTrial): string => (trialsBefore(scene, trial)[0] ?? trial).id;
  const own = scene.trials.find(({ id }) => id === trialId);
  const head = own && first(own);
  return new Set(scene.trials.filter((trial) => first(trial) === head).map(({ id }) => id));
}

/** Where a trial that goes on from another takes the train over. */
interface TakingOver {
  /** Chainage of the leading end along the trial's own way, mm, were the trial before to stop dead as it arrives. */
  readonly startMm: number;
  /** Which end of the train leads: this follows from how it stands. */
  readonly leading: SceneTrial['leading'];
}

/**
 * Where a trial would take the train over from another of the same train, on whose way it must stand with at least a part; null when it does not, or
 * something is not there.
 */
export function takingOver(scene: Scene, before: SceneTrial, trial: SceneTrial): TakingOver | null {
  const way = wayOf(scene, before);
  const onto = wayOf(scene, trial);
  const train = scene.trains.find(({ id }) => id === before.train);
  if (way === null || onto === null || train === undefined) return null;
  const trainMm = trainLength(trainPlaces(scene, train)) * 1000;
  const { finishMm, forward } = leadingEnds(wayLengthMm(way), trainMm, before);
  const tailMm = finishMm + (forward ? -trainMm : trainMm);
  const standing = standingOn(sharedStretches(way, onto), Math.min(finishMm, tailMm), Math.max(finishMm, tailMm));
  if (standing === null) return null;
  const { stretch } = standing;
  const goes = trial.towards !== 'start';
  const sameEnd = stretch.sense > 0 === (forward === goes);
  const leadMm = acrossMm(stretch, sameEnd ? finishMm : tailMm);
  const ontoMm = wayLengthMm(onto);
  const [least, most] = goes ? [trainMm, ontoMm] : [0, ontoMm - trainMm];
  const other = before.leading === 'first' ? 'last' : 'first';
  return {
    startMm: Math.min(Math.max(leadMm, least), most),
    leading: sameEnd ? before.leading : other,
  };
}

/** A trial that begins by itself, its leading end where it used to take the train over. */
export function onItsOwn(scene: Scene, { follows, ...trial }: SceneTrial): SceneTrial {
  const before = scene.trials.find(({ id }) => id === follows);
  const taken = before === undefined ? null : takingOver(scene, before, trial);
  return taken === null ? trial : { ...trial, startMm: Math.round(taken.startMm * 10) / 10 };
}

/** A scene whose trials go on from none that is not there any more: `scene` is how it was. */
export const withoutLoose = (scene: Scene, trials: readonly SceneTrial[]): SceneTrial[] =>
  trials.map((trial) =>
    trial.follows === undefined || trials.some(({ id }) => id === trial.follows) ? trial : onItsOwn(scene, trial),
  );
