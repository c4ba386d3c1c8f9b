import { openFile } from '../../../state/commands/index.ts';
import { runCommand, useDesk, useSession } from '../../context.tsx';
import { Dialog } from '../../controls/Dialog.tsx';
import { counted } from '../../show.ts';

/** Every scene that comes with the program, with the sentence that says what it shows, and its trials. */
export function Chooser({ onClose }: { readonly onClose: () => void }) {
  const desk = useDesk();
  const { actions, bundled } = desk;
  const scene = useSession((state) => state.scene);
  const trialId = useSession((state) => state.trialId);
  return (
    <Dialog title="Railways and their trials" onClose={onClose} className="chooser">
      <ul>
        {bundled.map((entry) => (
          <li key={entry.id}>
            <h3>{entry.scene.name}</h3>
            <p>{entry.scene.shows}</p>
            <ul aria-label={`Trials of ${entry.scene.name}`}>
              {entry.scene.trials.map((trial) => {
                const train = entry.scene.trains.find((one) => one.id === trial.train);
                const vehicles = train?.vehicles.reduce((sum, { count = 1 }) => sum + count, 0) ?? 0;
                return (
                  <li key={trial.id}>
                    <button
                      type="button"
                      aria-current={entry.scene === scene && trial.id === trialId ? 'true' : undefined}
                      onClick={() => {
                        onClose();
                        void actions.openScene(entry.scene, entry.scene.name, trial.id);
                      }}
                    >
                      <span>{trial.name}</span>
                      <small>
                        {train?.name}, {counted(vehicles, 'vehicle')}
                      </small>
                    </button>
                  </li>
                );
              })}
            </ul>
          </li>
        ))}
      </ul>
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
        <button type="button" className="plain-button" onClick={onClose}>
          Close
        </button>
      </div>
    </Dialog>
  );
}
