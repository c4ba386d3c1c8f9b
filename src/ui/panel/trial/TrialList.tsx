import { chooseRailway } from '../../../state/commands/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { CommandButton } from '../../controls/CommandButton.tsx';

/** The trials of this scene, and the way to other scenes. */
export function TrialList() {
  const { actions } = useDesk();
  const trials = useSession((state) => state.scene?.trials);
  const current = useSession((state) => state.trialId);
  if (!trials) return null;
  return (
    <>
      <div className="trials-head">
        <h3 id="trials-of-scene">Trials</h3>
        <CommandButton command={chooseRailway} className="link other-scenes" wordsInside>
          Other railways…
        </CommandButton>
      </div>
      <ul className="trial-list" aria-labelledby="trials-of-scene">
        {trials.map((trial) => (
          <li key={trial.id}>
            <button
              type="button"
              aria-current={trial.id === current ? 'true' : undefined}
              onClick={() => void actions.chooseTrial(trial.id)}
            >
              {trial.name}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
