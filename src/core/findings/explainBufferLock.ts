import { curveCures } from './curveCures.ts';
import { pairCurve } from './curves.ts';
import { bestCures, type Explainer } from './explainer.ts';
import { buffCause } from './loads.ts';

export const explainBufferLock: Explainer = {
  causes: (situation) => [...pairCurve(situation), buffCause(situation)],
  cures(situation, causes) {
    const candidates = curveCures(situation, causes);
    const pushed = causes.some((cause) => cause.kind === 'buff' && cause.force > 0);
    // Pulled, a gap stays open as wide as the slack; how wide that is on the curve a trial will tell.
    if (pushed) candidates.push({ cure: { kind: 'change-working' }, expected: situation.definition.near });
    return bestCures(situation, candidates);
  },
};
