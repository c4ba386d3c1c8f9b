import { useMemo } from 'react';
import type { Finding } from '../../core/findings/types.ts';
import { useSession } from '../context.tsx';
import { percentWords } from '../show.ts';
import { FindingCard } from './FindingCard.tsx';
import { PassingRow } from './PassingRow.tsx';
import { verdictWords } from './verdictWords.ts';
import './ledger.css';

const none: readonly Finding[] = [];

/** The findings of the trial on show in order of gravity, each with its cures; what passes is one line each. */
export function Ledger() {
  const findings = useSession((state) => state.result?.findings ?? none);
  const progress = useSession((state) => state.progress);
  const solved = useSession((state) => state.result !== null);
  const indexed = useMemo(() => findings.map((finding, index) => ({ finding, index })), [findings]);
  const open = indexed.filter(({ finding }) => finding.verdict !== 'passes');
  const passing = indexed.filter(({ finding }) => finding.verdict === 'passes');
  return (
    <aside className="ledger" aria-label="Findings">
      <div className="ledger-head">
        <h2>Findings</h2>
        <span aria-live="polite">{solved ? verdictWords(findings) : progress !== null ? 'being solved' : ''}</span>
        {progress !== null && (
          <i className="ledger-progress" style={{ width: percentWords(progress).replace('\u2009', '') }} />
        )}
      </div>
      <div className="ledger-list">
        {open.map(({ finding, index }) => (
          <FindingCard key={finding.risk} finding={finding} index={index} />
        ))}
        {passing.length > 0 && (
          <ul className="passing" aria-label="What passes">
            {passing.map(({ finding, index }) => (
              <PassingRow key={finding.risk} finding={finding} index={index} />
            ))}
          </ul>
        )}
        {!solved && (
          <p className="ledger-note">
            {progress !== null ? 'The trial is being solved.' : 'This trial has not been run.'}
          </p>
        )}
      </div>
    </aside>
  );
}
