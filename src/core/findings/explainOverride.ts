import { bestCures, type Candidate, type Explainer } from './explainer.ts';
import { headCauses } from './headCauses.ts';
import { headCures } from './headCures.ts';
import { beyondJoint, buffCause, vehiclesToDrop } from './loads.ts';

export const explainOverride: Explainer = {
  causes(situation) {
    if (situation.worst.governing === 'lift') return [buffCause(situation)];
    return [...headCauses(situation), buffCause(situation)];
  },
  cures(situation) {
    const { context, worst, definition } = situation;
    // Pulled, the joint has no steady buff left; run-ins remain, so this is not worth all there is to win.
    const pulled: Candidate = { cure: { kind: 'change-working' }, expected: definition.plenty / 2 };
    if (worst.governing !== 'lift') return bestCures(situation, [...headCures(situation), pulled]);
    const fewer = vehiclesToDrop(context, beyondJoint(context, worst.subject), worst.value, worst.limit);
    if (fewer === null) return bestCures(situation, [pulled]);
    const expected = definition.plenty * (1 - fewer.force / worst.limit);
    return bestCures(situation, [pulled, { cure: { kind: 'fewer-vehicles', by: fewer.by }, expected }]);
  },
};
