import { curveCures } from './curveCures.ts';
import { pairCurve } from './curves.ts';
import { bestCures, type Explainer } from './explainer.ts';

export const explainCouplerSwing: Explainer = {
  causes: pairCurve,
  cures: (situation, causes) => bestCures(situation, curveCures(situation, causes)),
};
