import type { Finding } from '../../../core/findings/types.ts';
import { riskById } from '../../../core/risks/index.ts';
import type { TrialResult } from '../../../state/types.ts';

/** The finding to explain at a joint: the chosen one if it is about this joint, else the gravest that is; null if none is. */
export function findingOfJoint(result: TrialResult, joint: number, chosen: number | null): Finding | null {
  const about = (finding: Finding | undefined): finding is Finding =>
    finding !== undefined && riskById(finding.risk).subject === 'joint' && finding.subject === joint;
  const first = chosen === null ? undefined : result.findings[chosen];
  return about(first) ? first : (result.findings.find(about) ?? null);
}
