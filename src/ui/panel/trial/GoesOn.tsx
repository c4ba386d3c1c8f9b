import { useId, useState } from 'react';
import { beginsWords, setFollows, trialsToGoOnFrom } from '../../../state/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk, useSession } from '../../context.tsx';

interface GoesOnProps {
  readonly scene: Scene;
  readonly trial: Scene['trials'][number];
}

/** Whether the trial begins by itself or where the train of another comes to its stand, and how that train then stands. */
export function GoesOn({ scene, trial }: GoesOnProps) {
  const { actions } = useDesk();
  const id = useId();
  const [why, setWhy] = useState<string | null>(null);
  const stands = useSession((state) => (state.compiled?.scene === state.scene ? beginsWords(state) : null));
  const others = trialsToGoOnFrom(scene, trial);
  if (others.length === 0) return null;
  const choose = (before: string) =>
    setWhy(
      actions.attempt(`beginning of “${trial.name}”`, (now) =>
        setFollows(now, trial.id, before === '' ? undefined : before),
      ),
    );
  return (
    <div className="goes-on">
      <label htmlFor={id}>Goes on from</label>
      <select id={id} value={trial.follows ?? ''} onChange={(event) => choose(event.target.value)}>
        <option value="">nothing: begins by itself</option>
        {others.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
      {trial.follows !== undefined && (
        <p className="quiet">
          It begins where and how that train comes to its stand{stands === null ? '' : <b>: {stands}</b>}.
        </p>
      )}
      {why !== null && (
        <span className="why" role="alert">
          {why}
        </span>
      )}
    </div>
  );
}
