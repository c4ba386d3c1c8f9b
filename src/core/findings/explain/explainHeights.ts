import { vehicleReach } from '../situation.ts';
import { bestCures, type Explainer } from './explainer.ts';
import { heightCauses } from './headCauses.ts';
import { heightCures } from './headCures.ts';

/** Vehicles that the heights under them lift off the rail or bring down on it. */
export const explainHeights: Explainer = {
  causes: (situation) => heightCauses(situation, vehicleReach(situation)),
  cures(situation) {
    const { bodyLength } = situation.context.train.vehicles[situation.worst.subject];
    return bestCures(situation, heightCures(situation, vehicleReach(situation), bodyLength));
  },
};
