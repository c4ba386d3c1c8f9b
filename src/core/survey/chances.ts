import { drawLines } from './belief.ts';
import { keepsLimits, type LimitSet } from './limitRows.ts';
import type { Belief } from './types.ts';

/** Draws for a probability: its own standard deviation is then at most 1.6 %. */
const draws = 1_000;

/** Seed of the draws; fixed, so that the same survey gives the same number. */
const seed = 1;

/** Probability that the line, changed by `changes` (m, one a support), keeps all limits, over all that the readings leave open. */
export function chanceOfKeeping(set: LimitSet, belief: Belief, changes: ArrayLike<number>): number {
  const lines = drawLines(belief, draws, seed);
  const kept = lines.filter((line) =>
    keepsLimits(
      set,
      line.map((value, i) => value + changes[i]),
    ),
  );
  return kept.length / draws;
}
