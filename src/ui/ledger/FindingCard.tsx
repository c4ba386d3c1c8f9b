import { explainRisk, standingOf } from '../../core/findings/index.ts';
import type { Finding } from '../../core/findings/types.ts';
import { describeOf } from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { Explained } from '../controls/Explained.tsx';
import { Measured } from '../controls/Measured.tsx';
import { useShow } from '../show.ts';
import { CureChip } from './CureChip.tsx';

interface FindingCardProps {
  readonly finding: Finding;
  readonly index: number;
}

/** A finding that fails, is undecided or comes near: which check, what, where, by how much, why, and what would help. */
export function FindingCard({ finding, index }: FindingCardProps) {
  const { actions, session } = useDesk();
  useShow();
  const chosen = useSession((state) => state.chosenFinding === index);
  const told = describeOf(session.getState(), finding);
  const standing = standingOf(finding);
  return (
    <article className={`finding ${finding.verdict} ${standing}`} aria-current={chosen ? 'true' : undefined}>
      <p className="check">
        <Explained words={explainRisk(finding.risk)}>{told.title}</Explained>
        {standing === 'undecided' && <b className="check-standing">undecided</b>}
      </p>
      <div className="told">
        <p className="number">
          {told.margin}
          {told.range && <small className="range">{told.range}</small>}
        </p>
        <h3>
          <button type="button" className="go" title="Go there" onClick={() => actions.seekToFinding(index)}>
            <Measured words={told.headline} />
          </button>
        </h3>
        <p className="why">
          <Measured words={told.cause} />
        </p>
      </div>
      {finding.cures.length > 0 && (
        <ul className="cures" aria-label="What would help">
          {told.cures.map((words, number) => (
            <li key={words}>
              <CureChip finding={index} cure={number} words={words} />
            </li>
          ))}
        </ul>
      )}
    </article>
  );
}
