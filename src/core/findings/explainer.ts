import type { Situation } from './situation.ts';
import type { Cause, Cure } from './types.ts';

/** How one risk's findings are explained and mended. Every risk has one, listed in `explainers.ts`. */
export interface Explainer {
  /** The most telling first. */
  causes(situation: Situation): Cause[];
  /** One to three where anything helps, in the order of expected help. */
  cures(situation: Situation, causes: readonly Cause[]): Cure[];
}

/** Something that may help, with the margin (SI) it is expected to leave. */
export interface Candidate {
  readonly cure: Cure;
  readonly expected: number;
}

const mostCures = 3;

/** The cures that help, best first. A gain below a hundredth of the risk's plenty is none. */
export function bestCures({ worst, definition }: Situation, candidates: readonly Candidate[]): Cure[] {
  return candidates
    .filter(({ expected }) => expected - worst.margin > definition.plenty / 100)
    .sort((a, b) => b.expected - a.expected)
    .slice(0, mostCures)
    .map(({ cure }) => cure);
}
