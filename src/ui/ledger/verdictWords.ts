import { type Standing, standingOf } from '../../core/findings/index.ts';
import type { Finding } from '../../core/findings/types.ts';

type Stood = Pick<Finding, 'verdict' | 'range'>;

/** "1 fails, 1 undecided, 1 near, 9 pass". */
export function verdictWords(findings: readonly Stood[]): string {
  const count = (standing: Standing) => findings.filter((finding) => standingOf(finding) === standing).length;
  const [fails, undecided, near, passes] = (['fails', 'undecided', 'near', 'passes'] as const).map(count);
  const parts = [
    fails > 0 && `${fails} ${fails === 1 ? 'fails' : 'fail'}`,
    undecided > 0 && `${undecided} undecided`,
    near > 0 && `${near} near`,
    passes > 0 && `${passes} ${passes === 1 ? 'passes' : 'pass'}`,
  ];
  return parts.filter(Boolean).join(', ');
}

/** Whether the train gets over the line, in one sentence. */
export function passesWords(findings: readonly Stood[]): string {
  const standing = findings.map(standingOf);
  if (standing.includes('fails')) return 'This train does not pass.';
  if (standing.includes('undecided')) return 'Undecided: this train may fail.';
  return standing.includes('near') ? 'This train passes, but only just.' : 'This train passes.';
}

/** What `describePass` says after its first sentence: what comes nearest to failing. */
export const closestWords = (told: string | null): string => told?.replace(/^Passes[^.]*\.\s*/u, '') ?? '';
