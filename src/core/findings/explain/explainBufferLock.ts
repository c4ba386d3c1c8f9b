import { curveCures } from './curveCures.ts';
import { pairCurve } from './curves.ts';
import { bestCures, type Explainer } from './explainer.ts';
import { buffCause } from './loads.ts';
import { changedWorking } from './working.ts';

export const explainBufferLock: Explainer = {
  causes: (situation) => [...pairCurve(situation), buffCause(situation)],
  cures(situation, causes) {
    const candidates = curveCures(situation, causes);
    const pushed = causes.some((cause) => cause.kind === 'buff' && cause.force > 0);
    // Pulled, a gap stays open as wide as the slack.
    if (pushed) candidates.push(changedWorking(situation));
    return bestCures(situation, candidates);
  },
};
