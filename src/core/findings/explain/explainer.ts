import type { RiskDefinition } from '../../risks/types.ts';
import type { Situation } from '../situation.ts';
import type { Cause, Cure } from '../types.ts';

/** How one risk's findings are explained and mended. Every risk has one, listed in `explainers.ts`. */
export interface Explainer {
  /** The most telling first. */
  causes(situation: Situation): Cause[];
  /** One to three where anything helps, what achieves most first; one that is not enough says so. */
  cures(situation: Situation, causes: readonly Cause[]): Cure[];
}

/** Something that may help, with the margin (SI) it is expected to leave. */
export interface Candidate {
  readonly cure: Cure;
  readonly expected: number;
  /** Margin it is measured against, told the same way; absent: the finding's. */
  readonly from?: number;
}

const mostCures = 3;

/** A builder cannot set a height or a head nearer than this, m: the thinnest card for a shim. What gains less is lost in the building. */
export const settable = 0.00025;

/** Nor does anyone set track out along the line nearer than this, m: a sleeper or two; an easement or a curve longer by less is the same. */
export const settableAlong = 0.01;

/** Shares and angles: a gain below this part of the risk's plenty does not show either. */
const tellingShare = 0.01;

const leastGain = ({ unit, plenty }: RiskDefinition): number => (unit === 'length' ? settable : tellingShare * plenty);

/** The cures that help, best first; those marked that leave a failing finding failing. */
export function bestCures({ worst, definition }: Situation, candidates: readonly Candidate[]): Cure[] {
  return candidates
    .filter(({ expected, from = worst.margin }) => expected - from > leastGain(definition))
    .sort((a, b) => b.expected - a.expected)
    .slice(0, mostCures)
    .map(({ cure, expected }) => (expected < 0 ? { ...cure, enough: false } : cure));
}
