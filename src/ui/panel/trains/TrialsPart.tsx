import { useId, useState } from 'react';
import { missingWorkings, withAllWorkings } from '../../../state/stock/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk, useSession } from '../../context.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { TrialButtons } from '../trial/TrialButtons.tsx';

interface TrialsPartProps {
  readonly scene: Scene;
  readonly train: Scene['trains'][number];
}

/** The trials of a train, and those it still lacks: both ways, pulled and propelled. */
export function TrialsPart({ scene, train }: TrialsPartProps) {
  const { actions } = useDesk();
  const id = useId();
  const current = useSession((state) => state.trialId);
  const [wanted, setTrack] = useState<string | null>(null);
  const trials = scene.trials.filter((trial) => trial.train === train.id);
  const track = scene.tracks.find((one) => one.id === (wanted ?? trials[0]?.track)) ?? scene.tracks[0];
  const missing = missingWorkings(scene, train.id, track.id).length;
  const like = current ?? scene.trials[0].id;
  return (
    <>
      <h3 id="train-trials">Trials</h3>
      <TrialButtons trials={trials} labelledBy="train-trials" />
      <div className="add-row">
        {scene.tracks.length > 1 && (
          <span className="sheet-field">
            <label htmlFor={id}>Over</label>
            <select id={id} value={track.id} onChange={(event) => setTrack(event.target.value)}>
              {scene.tracks.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.name}
                </option>
              ))}
            </select>
          </span>
        )}
        {missing === 0 ? (
          <span>Both ways, pulled and propelled: all four are there.</span>
        ) : (
          <Refusable
            acts={[
              {
                words:
                  missing === 4
                    ? 'Try it all four ways'
                    : missing === 1
                      ? 'Try it the other way'
                      : `Try it the other ${missing} ways`,
                spoken: `Make the trials of ${train.name} over ${track.name} that are missing`,
                act: () =>
                  actions.attempt(`trials of ${train.name}`, (now) => withAllWorkings(now, train.id, track.id, like)),
              },
            ]}
          />
        )}
      </div>
    </>
  );
}
