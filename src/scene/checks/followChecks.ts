import { trialsBefore } from '../goingOn.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrial } from '../schema/trialSchema.ts';
import type { Problem } from './problems.ts';
import { unknownId } from './references.ts';

/** What is wrong with the trial that one goes on from: not there, going on from this one itself, of another train, or never at a stand. */
export function followProblems(scene: Scene, trial: SceneTrial, path: string): Problem[] {
  const { follows } = trial;
  if (follows === undefined) return [];
  const at = `${path}.follows`;
  const before = scene.trials.find(({ id }) => id === follows);
  const fit = scene.trials.filter(
    (one) => one.train === trial.train && one.stopS !== undefined && !inCircle(scene, { ...trial, follows: one.id }),
  );
  if (before === undefined) {
    return [
      unknownId(
        at,
        follows,
        fit.map(({ id }) => id),
      ),
    ];
  }
  const example = fit[0] === undefined ? '' : JSON.stringify(fit[0].id);
  if (inCircle(scene, trial)) {
    return [
      {
        path: at,
        found: `"${follows}", with which it goes on in a circle`,
        allowed: 'a trial that comes before it',
        example,
      },
    ];
  }
  const problems: Problem[] = [];
  if (before.train !== trial.train) {
    problems.push({
      path: at,
      found: `"${follows}", which is run with train "${before.train}"`,
      allowed: `a trial of its own train "${trial.train}"`,
      example,
    });
  }
  if (before.stopS === undefined) {
    problems.push({
      path: at,
      found: `"${follows}", which is over as its train arrives, still moving`,
      allowed: 'a trial that ends with its train at a stand: one with "stopS"',
      example: `"stopS": 1 in "${follows}"`,
    });
  }
  if (trial.startMm !== undefined) {
    problems.push({
      path: `${path}.startMm`,
      found: `a start at ${trial.startMm} mm of a trial that goes on from "${follows}"`,
      allowed: 'either "follows" or "startMm": it begins where the other trial ends',
      example: '',
    });
  }
  return problems;
}

/** Whether a trial comes before itself. */
function inCircle(scene: Scene, trial: SceneTrial): boolean {
  if (trial.follows === trial.id) return true;
  const trials = scene.trials.map((one) => (one.id === trial.id ? trial : one));
  const [first = trial] = trialsBefore({ trials }, trial);
  return first.follows !== undefined && trials.some(({ id }) => id === first.follows);
}
