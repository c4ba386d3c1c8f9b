import { describeOf } from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { Measured } from '../controls/Measured.tsx';
import { useShow } from '../show.ts';
import { passesWords } from './verdictWords.ts';

/** On a screen of one column: the verdict above the stage, and the way down to the findings. */
export function VerdictLine() {
  const { session } = useDesk();
  useShow();
  const result = useSession((state) => state.result);
  if (!result) return null;
  const [gravest] = result.findings;
  const told = gravest && gravest.verdict !== 'passes' ? describeOf(session.getState(), gravest) : null;
  return (
    <a className={`verdict-line ${gravest?.verdict ?? ''}`} href="#findings">
      <span>
        <b>{passesWords(result.findings)}</b>
        {told && <Measured words={` ${told.headline}`} />}
      </span>
      {told && <span className="verdict-line-number">{told.margin}</span>}
      <span aria-hidden="true">↓</span>
    </a>
  );
}
