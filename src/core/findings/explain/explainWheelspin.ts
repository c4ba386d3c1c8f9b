import { bestCures, type Explainer } from './explainer.ts';
import { curveCause, gradeCause } from './gradeUnder.ts';
import { pullCures } from './pullCures.ts';

export const explainWheelspin: Explainer = {
  causes: (situation) => [{ kind: 'grip-limit' }, ...gradeCause(situation), ...curveCause(situation)],
  cures: (situation) => bestCures(situation, pullCures(situation)),
};
