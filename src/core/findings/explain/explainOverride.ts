import { bestCures, type Explainer } from './explainer.ts';
import { headCauses } from './headCauses.ts';
import { headCures } from './headCures.ts';
import { beyondJoint, buffCause } from './loads.ts';
import { changedWorking, fewerVehicles } from './working.ts';

export const explainOverride: Explainer = {
  causes(situation) {
    if (situation.worst.governing === 'lift') return [buffCause(situation)];
    return [...headCauses(situation), buffCause(situation)];
  },
  cures(situation) {
    const { context, worst, definition } = situation;
    const pulled = changedWorking(situation);
    if (worst.governing !== 'lift') return bestCures(situation, [...headCures(situation), pulled]);
    const left = (force: number): number => definition.plenty * (1 - force / worst.limit);
    return bestCures(situation, [
      pulled,
      ...fewerVehicles(situation, beyondJoint(context, worst.subject), worst.limit, left),
    ]);
  },
};
