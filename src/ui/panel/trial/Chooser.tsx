import { openFile } from '../../../state/commands/index.ts';
import { openKept } from '../../../state/index.ts';
import type { Scene } from '../../../state/types.ts';
import { runCommand, useDesk, useSession } from '../../context.tsx';
import { Dialog } from '../../controls/Dialog.tsx';
import { counted } from '../../show.ts';

/** What a trial runs, in a few words. */
function trainWords(scene: Scene, trainId: string): string {
  const train = scene.trains.find(({ id }) => id === trainId);
  const vehicles = train?.vehicles.reduce((sum, { count = 1 }) => sum + count, 0) ?? 0;
  return `${train?.name ?? ''}, ${counted(vehicles, 'vehicle')}`;
}

/** Every scene there is, with the sentence that says what it shows and its trials; those of the open one are unfolded. */
export function Chooser({ onClose }: { readonly onClose: () => void }) {
  const desk = useDesk();
  const { actions, bundled, kept } = desk;
  const scene = useSession((state) => state.scene);
  const trialId = useSession((state) => state.trialId);
  const own = kept.list();
  return (
    <Dialog title="Railways and their trials" onClose={onClose} className="chooser">
      <div className="scroll">
        {own.length > 0 && (
          <section aria-label="Yours">
            <h3>Yours, kept on this machine</h3>
            <ul>
              {own.map((entry) => (
                <li key={entry.name}>
                  <button
                    type="button"
                    className="choice"
                    aria-current={
                      scene?.name === entry.name && desk.session.getState().savedAt !== null ? 'true' : undefined
                    }
                    onClick={() => {
                      onClose();
                      void openKept(desk, entry).then((opened) => {
                        if (!opened) {
                          actions.report({ title: `“${entry.name}” can no longer be read`, lines: [] });
                        }
                      });
                    }}
                  >
                    <span>{entry.name}</span>
                    <small>
                      changed {new Date(entry.at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })}
                    </small>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        )}
        {bundled.map((entry) => (
          <details key={entry.id} open={entry.scene.name === scene?.name} name="railway">
            <summary>
              <h3>{entry.scene.name}</h3>
              <small>{counted(entry.scene.trials.length, 'trial')}</small>
              <p>{entry.scene.shows}</p>
            </summary>
            <ul aria-label={`Trials of ${entry.scene.name}`}>
              {entry.scene.trials.map((trial) => (
                <li key={trial.id}>
                  <button
                    type="button"
                    className="choice"
                    aria-current={entry.scene === scene && trial.id === trialId ? 'true' : undefined}
                    onClick={() => {
                      onClose();
                      if (entry.scene === scene) void actions.chooseTrial(trial.id);
                      else void actions.openScene(entry.scene, undefined, trial.id);
                    }}
                  >
                    <span>{trial.name}</span>
                    <small>{trainWords(entry.scene, trial.train)}</small>
                  </button>
                </li>
              ))}
            </ul>
          </details>
        ))}
      </div>
      <div className="actions">
        <button
          type="button"
          className="plain-button"
          onClick={() => {
            onClose();
            runCommand(desk, openFile);
          }}
        >
          {openFile.label(desk)}
        </button>
        <button type="button" className="plain-button first" onClick={onClose}>
          Close
        </button>
      </div>
    </Dialog>
  );
}
