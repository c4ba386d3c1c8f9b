import { bestCures, type Explainer } from './explainer.ts';
import { curveCause, gradeCause } from './gradeUnder.ts';
import { pullCures } from './pullCures.ts';

export const explainStall: Explainer = {
  causes: (situation) => [
    { kind: situation.worst.governing === 'grip' ? 'grip-limit' : 'motor-limit' },
    ...gradeCause(situation),
    ...curveCause(situation),
  ],
  cures: (situation) => bestCures(situation, pullCures(situation)),
};
