import { hypot } from '../../math/index.ts';
import { trackPoint } from '../../track/index.ts';
import { ofLeg, type Part } from '../part.ts';
import type { Situation } from '../situation.ts';
import { bestCures, type Explainer } from './explainer.ts';
import { bestSupport, type SupportCure } from './supports.ts';

/** Supports this near in plan bear the rail under a vehicle or the deck over it, m: one or two spans of the usual strip. */
const within = 0.4;

/** The support, of the train's own way under it or over it, whose setting back gives most room; null when none does. */
function supportInTheWay(situation: Situation): SupportCure | null {
  const { trial, context, worst } = situation;
  const here = trackPoint(context.path.track, worst.chainage);
  const beside = ({ track }: Part, chainage: number): boolean => {
    const there = trackPoint(track, chainage);
    return hypot(there.x - here.x, there.y - here.y) <= within;
  };
  return bestSupport(situation, trial.parts, beside, context.train.vehicles[worst.subject].bodyLength);
}

export const explainHeadroom: Explainer = {
  causes(situation) {
    const support = supportInTheWay(situation);
    if (support === null) return [{ kind: 'deck-above' }];
    const { part, error } = support;
    const { number, departure } = error;
    return [{ kind: 'deck-above' }, { kind: 'support-off', support: number, departure, ...ofLeg(part) }];
  },
  cures(situation) {
    const support = supportInTheWay(situation);
    if (support === null) return [];
    const { part, error, by, expected } = support;
    return bestCures(situation, [
      { cure: { kind: 'set-support', support: error.number, by, ...ofLeg(part) }, expected },
    ]);
  },
};
