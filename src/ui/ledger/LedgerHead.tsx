import { describePass } from '../../core/findings/index.ts';
import { namingOf } from '../../state/index.ts';
import { useSession } from '../context.tsx';
import { Measured } from '../controls/Measured.tsx';
import { percentWords, useShow } from '../show.ts';
import { closestWords, passesWords, verdictWords } from './verdictWords.ts';

/** Whether the train passes, how many checks stand which way, and what comes nearest; how far a run under way is. */
export function LedgerHead() {
  const show = useShow();
  const result = useSession((state) => state.result);
  const trial = useSession((state) => state.trial);
  const progress = useSession((state) => state.progress);
  const closest = result && closestWords(describePass(result.findings, namingOf({ trial, result }), show));
  return (
    <div className="ledger-head">
      <h2>{result ? passesWords(result.findings) : 'Findings'}</h2>
      <p aria-live="polite">{result ? verdictWords(result.findings) : progress !== null ? 'being solved' : ''}</p>
      {closest && (
        <p className="closest">
          <Measured words={closest} />
        </p>
      )}
      {progress !== null && (
        <i className="ledger-progress" style={{ width: percentWords(progress).replace('\u2009', '') }} />
      )}
    </div>
  );
}
