import { useId } from 'react';
import { explainRisk } from '../../core/findings/index.ts';
import type { Finding } from '../../core/findings/types.ts';
import { describeOf } from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { useShow } from '../show.ts';

/** A check that passes, in one line: what it is, where it comes nearest, what is left; pressed, also what it is about. */
export function PassingRow({ finding, index }: { readonly finding: Finding; readonly index: number }) {
  const { actions, session } = useDesk();
  useShow();
  const id = useId();
  const chosen = useSession((state) => state.chosenFinding === index);
  const told = describeOf(session.getState(), finding);
  const explained = explainRisk(finding.risk);
  return (
    <li>
      <button
        type="button"
        className="passing-row"
        aria-current={chosen ? 'true' : undefined}
        aria-describedby={id}
        title={explained}
        onClick={() => actions.seekToFinding(index)}
      >
        <span>{told.title}</span>
        <small className="where">{told.where}</small>
        <b>{told.margin}</b>
      </button>
      <p id={id} className="passing-told" hidden={!chosen}>
        {told.headline} {explained}
      </p>
    </li>
  );
}
