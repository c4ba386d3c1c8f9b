import type { Finding, Verdict } from '../../core/findings/types.ts';

/** "1 fails, 1 near, 9 pass". */
export function verdictWords(findings: readonly Finding[]): string {
  const count = (verdict: Verdict) => findings.filter((finding) => finding.verdict === verdict).length;
  const fails = count('fails');
  const near = count('near');
  const passes = count('passes');
  const parts = [
    fails > 0 && `${fails} ${fails === 1 ? 'fails' : 'fail'}`,
    near > 0 && `${near} near`,
    passes > 0 && `${passes} ${passes === 1 ? 'passes' : 'pass'}`,
  ];
  return parts.filter(Boolean).join(', ');
}
