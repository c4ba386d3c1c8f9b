import { describeMargin, remainderWords, sideEffectWords } from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { Measured } from '../controls/Measured.tsx';

interface CureChipProps {
  readonly finding: number;
  readonly cure: number;
  readonly words: string;
}

/** Something that would help: what it is, the margin it leads to, Try. Tried it is a ghost, and the chip keeps it. */
export function CureChip({ finding, cure, words }: CureChipProps) {
  const { actions, session } = useDesk();
  const outcome = useSession((state) => state.cures.get(finding)?.[cure]);
  const shown = useSession((state) => state.ghost?.finding === finding && state.ghost.cure === cure);
  if (!outcome) return null;
  const { state, margin, progress } = outcome;
  const impossible = state === 'impossible';
  const number = margin === null ? '' : describeMargin(session.getState(), finding, margin);
  const worse = outcome.result && sideEffectWords(session.getState(), finding, outcome.result);
  const left = outcome.result && remainderWords(session.getState(), finding, outcome.result);
  const act = () => {
    if (impossible) return;
    if (shown) actions.keepCure();
    else void actions.tryCure(finding, cure);
  };
  return (
    <div className={shown ? 'chip shown' : 'chip'}>
      <button type="button" className="act" aria-disabled={impossible || undefined} onClick={act}>
        <span className="action">
          <Measured words={words} />
        </span>
        <b>{state === 'running' || state === 'waiting' ? '…' : number}</b>
        <u>{impossible ? 'not here' : shown ? 'Keep' : 'Try'}</u>
      </button>
      {left && (
        <p>
          <Measured words={left} />
        </p>
      )}
      {worse && (
        <p>
          <Measured words={worse} />
        </p>
      )}
      {shown && (
        <p>
          Shown beside what is.{' '}
          <button type="button" className="link" onClick={actions.dropGhost}>
            Drop it <kbd>Esc</kbd>
          </button>
        </p>
      )}
      {state === 'running' && <i className="bar" style={{ width: `${Math.round(progress * 100)}%` }} />}
    </div>
  );
}
