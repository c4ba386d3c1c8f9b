import type { Finding } from '../../core/findings/types.ts';
import { describeOf } from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { useShow } from '../show.ts';

/** A check that passes, in one line: what it is, where it comes nearest, what is left. */
export function PassingRow({ finding, index }: { readonly finding: Finding; readonly index: number }) {
  const { actions, session } = useDesk();
  useShow();
  const chosen = useSession((state) => state.chosenFinding === index);
  const told = describeOf(session.getState(), finding);
  return (
    <li>
      <button
        type="button"
        className="passing-row"
        aria-current={chosen ? 'true' : undefined}
        title={told.headline}
        onClick={() => actions.seekToFinding(index)}
      >
        <span>{told.title}</span>
        <small className="where">{told.where}</small>
        <b>{told.margin}</b>
      </button>
    </li>
  );
}
