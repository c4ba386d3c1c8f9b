import { formatNumber, thinSpace } from '../../../core/units/index.ts';
import { runTrial, stopRun } from '../../../state/commands/index.ts';
import { beforeWords, verdictWords } from '../../../state/route/index.ts';
import { runCommand, useDesk, useRoute, useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';
import { solvedWords } from './solvedWords.ts';
import './advice.css';

/** The smallest margin of the railway as it now is, beside what it was before the change; and the full run that follows, with its progress and the way to stop it. */
export function VerdictLine() {
  const desk = useDesk();
  const show = useShow();
  const verdict = useRoute((state) => state.verdict);
  const before = useRoute((state) => state.before);
  const held = useSession((state) => state.holding);
  const progress = useSession((state) => state.progress);
  const solved = useSession((state) => solvedWords(state));
  const told = verdict === null ? null : verdictWords(verdict, show);
  const fails = told?.fails ?? solved?.fails ?? false;
  const compared = verdict === null ? null : beforeWords(verdict, before, show);
  return (
    <div className="line-verdict" data-fails={fails} data-held={held}>
      <p role="status">
        <b>{told?.words ?? solved?.words ?? 'The margins are being worked out.'}</b>
        {compared !== null && <span className="compared">{compared}</span>}
      </p>
      <p className="run-line">
        {progress !== null ? (
          <>
            full run, {formatNumber(progress * 100, { digits: 0 })}
            {thinSpace}%
            <button type="button" className="link" onClick={() => runCommand(desk, stopRun)}>
              Stop
            </button>
          </>
        ) : told === null ? (
          'from the full run'
        ) : held ? (
          'without run-ins and starts; the full run follows when you let go'
        ) : (
          <>
            without run-ins and starts
            <button type="button" className="link" onClick={() => runCommand(desk, runTrial)}>
              Run in full
            </button>
          </>
        )}
      </p>
    </div>
  );
}
