import { Fragment } from 'react';
import type { Scene } from '../../state/types.ts';
import { type BundledScene, useDesk, useSession } from '../context.tsx';
import { counted } from '../show.ts';

/** What a trial runs, in a few words. */
function trainWords(scene: Scene, trainId: string): string {
  const train = scene.trains.find(({ id }) => id === trainId);
  const vehicles = train?.vehicles.reduce((sum, { count = 1 }) => sum + count, 0) ?? 0;
  return `${train?.name ?? ''}, ${counted(vehicles, 'vehicle')}`;
}

/** The railways that come with the program; the one that is open, or was before it was changed, is unfolded. */
export function Examples({ onClose }: { readonly onClose: () => void }) {
  const { bundled } = useDesk();
  const scene = useSession((state) => state.scene);
  const current =
    bundled.find((entry) => entry.scene === scene) ?? bundled.find((entry) => entry.scene.name === scene?.name);
  return (
    <>
      <p className="choices-head">Examples, as they come with the program</p>
      {bundled.map((entry, index) => (
        <Fragment key={entry.id}>
          {entry.group !== undefined && entry.group !== bundled[index - 1]?.group && (
            <p className="choices-head">{entry.group}</p>
          )}
          <details open={entry === current} name="railway">
            <summary>
              <h3>{entry.scene.name}</h3>
              <small>{counted(entry.scene.trials.length, 'trial')}</small>
              <p>{entry.scene.shows}</p>
            </summary>
            <TrialsOf entry={entry} onClose={onClose} />
          </details>
        </Fragment>
      ))}
    </>
  );
}

function TrialsOf({ entry: { scene }, onClose }: { readonly entry: BundledScene; readonly onClose: () => void }) {
  const { actions } = useDesk();
  const open = useSession((state) => state.scene);
  const trialId = useSession((state) => state.trialId);
  return (
    <ul aria-label={`Trials of ${scene.name}`}>
      {scene.trials.map((trial) => (
        <li key={trial.id}>
          <button
            type="button"
            className="choice"
            aria-current={scene === open && trial.id === trialId ? 'true' : undefined}
            onClick={() => {
              onClose();
              if (scene === open) void actions.chooseTrial(trial.id);
              else void actions.openScene(scene, undefined, trial.id);
            }}
          >
            <span>{trial.name}</span>
            <small>{trainWords(scene, trial.train)}</small>
          </button>
        </li>
      ))}
    </ul>
  );
}
