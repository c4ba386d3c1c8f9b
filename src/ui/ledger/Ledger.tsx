import { useMemo } from 'react';
import { standingOf } from '../../core/findings/index.ts';
import type { Finding } from '../../core/findings/types.ts';
import { useSession } from '../context.tsx';
import { FindingCard } from './FindingCard.tsx';
import { LedgerHead } from './LedgerHead.tsx';
import { PassingRow } from './PassingRow.tsx';
import './ledger.css';

const none: readonly Finding[] = [];

/** Whether the train passes, then the findings in order of gravity, each with its cures; what passes is one line each. */
export function Ledger() {
  const findings = useSession((state) => state.result?.findings ?? none);
  const running = useSession((state) => state.progress !== null);
  const solved = useSession((state) => state.result !== null);
  const indexed = useMemo(() => findings.map((finding, index) => ({ finding, index })), [findings]);
  const open = indexed.filter(({ finding }) => standingOf(finding) !== 'passes');
  const passing = indexed.filter(({ finding }) => standingOf(finding) === 'passes');
  return (
    <aside id="findings" className="ledger" aria-label="Findings">
      <LedgerHead />
      <div className="ledger-list">
        {open.map(({ finding, index }) => (
          <FindingCard key={`${finding.risk} ${index}`} finding={finding} index={index} />
        ))}
        {passing.length > 0 && (
          <ul className="passing" aria-label="What passes">
            {passing.map(({ finding, index }) => (
              <PassingRow key={`${finding.risk} ${index}`} finding={finding} index={index} />
            ))}
          </ul>
        )}
        {!solved && (
          <p className="ledger-note">{running ? 'The trial is being solved.' : 'This trial has not been run.'}</p>
        )}
      </div>
    </aside>
  );
}
