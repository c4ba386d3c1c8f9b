import type { Train } from '../stock/types.ts';
import { defaultRunOptions } from './defaults.ts';
import { jointLaws, RIGID } from './jointLaws.ts';

/** Steps to a swing of the quickest joint with which halving them changes the greatest forces by less than a per cent: measured, see docs/mechanics/solver.md. */
const STEPS_TO_A_SWING = 30;

/** Times that the usual step is halved at most: a quarter of a millisecond. What swings faster than it shows is stiff shanks on a vehicle of a few grams. */
const MOST_HALVINGS = 2;

/**
 * The step that a train is run with when nobody says another, s: a millisecond, halved until two vehicles swing against each other on the stiffest of their springs in thirty steps or more. Rigid bars, which are no
 * springs, do not count.
 */
export function usualStep(train: Train): number {
  const { vehicles } = train;
  let quickest = 0;
  jointLaws(train).forEach((law, j) => {
    const stiffest = Math.max(
      ...[
        law.draftStiffness,
        law.buffStiffness,
        law.draftSecond?.stiffness ?? 0,
        law.buffSecond?.stiffness ?? 0,
      ].filter((stiffness) => stiffness < RIGID),
      0,
    );
    const squared = stiffest * (1 / vehicles[j]!.mass + 1 / vehicles[j + 1]!.mass);
    quickest = Math.max(quickest, Math.sqrt(squared));
  });
  let { step } = defaultRunOptions;
  for (let halved = 0; halved < MOST_HALVINGS && STEPS_TO_A_SWING * step * quickest > 2 * Math.PI; halved++) step /= 2;
  return step;
}
