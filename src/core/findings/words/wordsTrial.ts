import { riskById } from '../../risks/index.ts';
import { standingOf } from '../standing.ts';
import type { Finding } from '../types.ts';
import type { Naming, Show } from './show.ts';
import { describeFinding } from './words.ts';

/** The finding with the least margin in terms of its risk's own plenty: what comes nearest to failing, whatever its unit; null without any. */
export function closestCall(findings: readonly Finding[]): Finding | null {
  const share = ({ risk, margin }: Finding): number => margin / riskById(risk).plenty;
  return findings.reduce<Finding | null>(
    (least, one) => (least === null || share(one) < share(least) ? one : least),
    null,
  );
}

/**
 * A trial that passes in a sentence or two: `Passes. Closest call: grip in hand, 21 % left, engine at 8.81 m.` Findings as the trial gives them.
 * Null where something fails or may fail: its own headline says that.
 */
export function describePass(findings: readonly Finding[], naming: Naming, show: Show): string | null {
  if (findings.some((finding) => ['fails', 'undecided'].includes(standingOf(finding)))) return null;
  const closest = closestCall(findings);
  if (closest === null) return 'Passes.';
  const { title, where, margin } = describeFinding(closest, naming, show);
  const near = closest.verdict === 'near' ? 'Passes, but only just.' : 'Passes.';
  return `${near} Closest call: ${title.charAt(0).toLowerCase()}${title.slice(1)}, ${margin} left, ${where}.`;
}
