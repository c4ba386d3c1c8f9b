import { bestCures, type Candidate, type Explainer } from './explainer.ts';
import { gradeCause } from './gradeUnder.ts';
import { headCauses } from './headCauses.ts';
import { headCures } from './headCures.ts';
import { beyondJoint, draftCause, vehiclesToDrop } from './loads.ts';

export const explainParting: Explainer = {
  causes(situation) {
    if (situation.worst.governing === 'release') return [draftCause(situation), ...gradeCause(situation)];
    return [...headCauses(situation), draftCause(situation)];
  },
  cures(situation) {
    const { context, worst, definition } = situation;
    if (worst.governing !== 'release') return bestCures(situation, headCures(situation));
    // Pushed, the joint has no steady pull left, but the push brings dangers of its own: named last unless nothing else helps.
    const pushed: Candidate = { cure: { kind: 'change-working' }, expected: definition.near };
    const fewer = vehiclesToDrop(context, beyondJoint(context, worst.subject), worst.value, worst.limit);
    if (fewer === null) return bestCures(situation, [pushed]);
    const expected = definition.near + definition.plenty * (1 - fewer.force / worst.limit);
    return bestCures(situation, [{ cure: { kind: 'fewer-vehicles', by: fewer.by }, expected }, pushed]);
  },
};
