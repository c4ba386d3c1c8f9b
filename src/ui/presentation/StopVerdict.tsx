import { type SceneTourStop, verdictOfStop } from '../../state/show/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { Measured } from '../controls/Measured.tsx';
import { passesWords } from '../ledger/verdictWords.ts';
import { useShow } from '../show.ts';

interface StopVerdictProps {
  readonly stop: SceneTourStop;
  /** False: covered until the audience has guessed. */
  readonly told: boolean;
}

/** How the stop comes out, with its margin; or the question, while the audience guesses. */
export function StopVerdict({ stop, told }: StopVerdictProps) {
  const { actions, session } = useDesk();
  useShow();
  const result = useSession((state) => state.result);
  const solving = useSession((state) => state.progress !== null);
  if (solving || result === null) return <div className="stop-verdict quiet">Being solved…</div>;
  const verdict = verdictOfStop(session.getState(), stop);
  if (verdict === null) return null;
  if (!told) {
    return (
      <div className="stop-verdict covered" aria-live="polite">
        <p className="question">{verdict.ofTrial ? 'Will this train pass?' : 'Will it pass?'}</p>
        {!verdict.ofTrial && <p className="sentence">What is judged: {verdict.title.toLowerCase()}.</p>}
        <button type="button" onClick={actions.tellVerdict}>
          Tell the verdict
        </button>
      </div>
    );
  }
  return (
    <div className={`stop-verdict ${verdict.standing}`} aria-live="polite">
      <p className="outcome">
        <b>{verdict.ofTrial ? passesWords(result.findings) : verdict.word}</b>
        {verdict.margin !== '' && (
          <span className="margin">
            <small>margin</small> <Measured words={verdict.margin} />
          </span>
        )}
      </p>
      {verdict.sentence !== '' && (
        <p className="sentence">
          <Measured words={verdict.sentence} />
        </p>
      )}
    </div>
  );
}
