import { bestCures, type Explainer } from './explainer.ts';
import { gradeCause } from './gradeUnder.ts';
import { headCauses } from './headCauses.ts';
import { headCures } from './headCures.ts';
import { beyondJoint, draftCause } from './loads.ts';
import { changedWorking, fewerVehicles } from './working.ts';

export const explainParting: Explainer = {
  causes(situation) {
    if (situation.worst.governing === 'release') return [draftCause(situation), ...gradeCause(situation)];
    return [...headCauses(situation), draftCause(situation)];
  },
  cures(situation) {
    const { context, worst, definition } = situation;
    if (worst.governing !== 'release') return bestCures(situation, headCures(situation));
    // Propelled, the joint has no steady pull left, but the push brings dangers of its own: named last unless nothing else helps.
    const left = (force: number): number => definition.near + definition.plenty * (1 - force / worst.limit);
    return bestCures(situation, [
      ...fewerVehicles(situation, beyondJoint(context, worst.subject), worst.limit, left),
      changedWorking(situation),
    ]);
  },
};
