import { useDesk, useSession } from '../../context.tsx';

/** The trials of this scene, and the way to other scenes. */
export function TrialList({ onChooseScene }: { readonly onChooseScene: () => void }) {
  const { actions } = useDesk();
  const trials = useSession((state) => state.scene?.trials);
  const current = useSession((state) => state.trialId);
  if (!trials) return null;
  return (
    <>
      <h3 id="trials-of-scene">Trials</h3>
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
      <button type="button" className="link other-scenes" onClick={onChooseScene}>
        Other railways…
      </button>
    </>
  );
}
