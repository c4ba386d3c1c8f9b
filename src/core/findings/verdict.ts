import type { Governing, RiskDefinition, Worst } from '../risks/types.ts';
import { standingOf, standings } from './standing.ts';
import type { Finding, Verdict } from './types.ts';

/**
 * A margin this share of its limit is near whatever the scale: the fixed distances of the risks are those of H0 and 00, and
 * on N stock everything is half as large.
 */
const nearShare = 0.25;

/** Ways to fail whose limit is no size of the stock: forces, and a gap that stands as wide as it happens to. */
const unsized: readonly Governing[] = ['lift', 'release', 'gap'];

/** Fails below zero; near when little is left, or when tolerances could take all of it. */
export function verdictOf(definition: RiskDefinition, worst: Worst): Verdict {
  if (worst.margin < 0) return 'fails';
  const sized = definition.valueUnit === undefined && !(worst.governing !== null && unsized.includes(worst.governing));
  const near = sized && worst.limit > 0 ? Math.min(definition.near, nearShare * worst.limit) : definition.near;
  return worst.margin < near || (worst.range !== null && worst.range[0] < 0) ? 'near' : 'passes';
}

/**
 * How grave one finding is beside another, for sorting: how it stands, then margin in terms of the risk's own plenty. What fails as measured
 * so comes before what does not among those that may.
 */
export function byGravity(
  a: { readonly finding: Finding; readonly share: number },
  b: { readonly finding: Finding; readonly share: number },
): number {
  const grave = ({ finding }: { readonly finding: Finding }): number => standings.indexOf(standingOf(finding));
  return grave(a) - grave(b) || a.share - b.share;
}
