import type { Scene } from '../../../state/types.ts';
import { useDesk, useSession } from '../../context.tsx';

interface TrialButtonsProps {
  readonly trials: readonly Scene['trials'][number][];
  /** Id of the heading they stand under. */
  readonly labelledBy: string;
}

/** Trials to choose from, the one shown marked. */
export function TrialButtons({ trials, labelledBy }: TrialButtonsProps) {
  const { actions } = useDesk();
  const current = useSession((state) => state.trialId);
  return (
    <ul className="trial-list" aria-labelledby={labelledBy}>
      {trials.map((trial) => (
        <li key={trial.id}>
          <button
            type="button"
            aria-current={trial.id === current ? 'true' : undefined}
            onClick={() => void actions.chooseTrial(trial.id)}
          >
            {trial.name}
            {trial.follows !== undefined && (
              <small>goes on from {trials.find(({ id }) => id === trial.follows)?.name ?? trial.follows}</small>
            )}
          </button>
        </li>
      ))}
    </ul>
  );
}
