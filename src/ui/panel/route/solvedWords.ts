import { closestCall } from '../../../core/findings/index.ts';
import { describeOf } from '../../../state/index.ts';
import type { VerdictWords } from '../../../state/route/index.ts';
import type { SessionState } from '../../../state/types.ts';

let last: VerdictWords = { words: '', fails: false };

/** The closest call of the trial on show in one line; null while nothing is solved. The same words are the same object, so that a screen may select them. */
export function solvedWords(state: SessionState): VerdictWords | null {
  const { result, trialId } = state;
  if (result === null || result.trialId !== trialId) return null;
  const call = closestCall(result.findings);
  const fails = result.findings.some(({ verdict }) => verdict === 'fails');
  const told = call && describeOf(state, call);
  const where = told ? `${told.title} ${told.margin} ${told.where}` : null;
  const words = where === null ? 'Passes' : fails ? `Fails: ${where}` : `Passes; closest: ${where}`;
  if (words !== last.words || fails !== last.fails) last = { words, fails };
  return last;
}
