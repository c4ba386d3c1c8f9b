import { fewerVehicles, settingFor } from './enginePull.ts';
import { bestCures, type Candidate, type Explainer } from './explainer.ts';
import { gripCures } from './explainWheelspin.ts';
import { curveCause, gradeCause } from './gradeUnder.ts';
import type { Cause } from './types.ts';

/** What the controller should leave in hand, as a share of the need. */
const inHand = 0.2;

export const explainStall: Explainer = {
  causes(situation) {
    const limit: Cause = { kind: situation.worst.governing === 'grip' ? 'grip-limit' : 'motor-limit' };
    return [limit, ...gradeCause(situation), ...curveCause(situation)];
  },
  cures(situation) {
    const { context, worst } = situation;
    const { value: needed, limit: available } = worst;
    // Short of grip the wheels slip and give still less: what has to be cured is the slip.
    const slips = worst.margin < 0;
    if (worst.governing === 'grip') {
      return bestCures(situation, gripCures(situation, slips ? Number.POSITIVE_INFINITY : needed));
    }
    const candidates: Candidate[] = fewerVehicles(context, needed, available);
    const to = settingFor(context, (1 + inHand) * needed);
    if (to !== null) candidates.push({ cure: { kind: 'setting', to: Math.ceil(to * 100) / 100 }, expected: inHand });
    return bestCures(situation, candidates);
  },
};
