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
    // Pulled, nothing pushes steadily any more; run-ins remain, so it is not worth more than what is called near.
    const pulled: Candidate = { cure: { kind: 'change-working' }, expected: definition.near };
    if (worst.governing !== 'lift') return bestCures(situation, [...headCures(situation), pulled]);
    const fewer = vehiclesToDrop(context, beyondJoint(context, worst.subject), worst.value, worst.limit);
    if (fewer === null) return bestCures(situation, [pulled]);
    const expected = definition.plenty * (1 - fewer.force / worst.limit);
    return bestCures(situation, [pulled, { cure: { kind: 'fewer-vehicles', by: fewer.by }, expected }]);
  },
};
