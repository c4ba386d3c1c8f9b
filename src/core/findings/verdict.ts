import type { RiskDefinition, Worst } from '../risks/types.ts';
import type { Verdict } from './types.ts';

/**
 * A margin this share of its limit is near whatever the scale: the fixed distances of the risks are those of H0 and 00, and
 * on N stock everything is half as large.
 */
const nearShare = 0.25;

/** Fails below zero; near when little is left, or when tolerances could take all of it. */
export function verdictOf(definition: RiskDefinition, worst: Worst): Verdict {
  if (worst.margin < 0) return 'fails';
  const sized = definition.valueUnit === undefined && worst.governing !== 'lift' && worst.governing !== 'release';
  const near = sized && worst.limit > 0 ? Math.min(definition.near, nearShare * worst.limit) : definition.near;
  return worst.margin < near || (worst.range !== null && worst.range[0] < 0) ? 'near' : 'passes';
}

const order: Readonly<Record<Verdict, number>> = { fails: 0, near: 1, passes: 2 };

/** How grave one finding is beside another, for sorting: verdict first, then margin in terms of the risk's own plenty. */
export function byGravity(
  a: { readonly verdict: Verdict; readonly share: number },
  b: { readonly verdict: Verdict; readonly share: number },
): number {
  return order[a.verdict] - order[b.verdict] || a.share - b.share;
}
