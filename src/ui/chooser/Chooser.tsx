import { newRailway, openFile } from '../../state/commands/index.ts';
import { runCommand, useDesk, useSession } from '../context.tsx';
import { Dialog } from '../controls/Dialog.tsx';
import { Examples } from './Examples.tsx';
import { OpenName } from './OpenName.tsx';
import { OwnRailways } from './OwnRailways.tsx';
import './chooser.css';

/** Every railway there is, with the sentence that says what it shows and its trials; those of the open one are unfolded. */
export function Chooser() {
  const open = useSession((state) => state.chooser);
  return open ? <ChooserSheet /> : null;
}

function ChooserSheet() {
  const desk = useDesk();
  const close = () => desk.actions.setChooser(false);
  return (
    <Dialog title="Railways and their trials" onClose={close} className="chooser">
      <div className="scroll">
        <OpenName />
        <OwnRailways onClose={close} />
        <Examples onClose={close} />
      </div>
      <div className="actions">
        <button
          type="button"
          className="plain-button"
          onClick={() => {
            close();
            runCommand(desk, newRailway);
          }}
        >
          {newRailway.label(desk)}
        </button>
        <button
          type="button"
          className="plain-button"
          onClick={() => {
            close();
            runCommand(desk, openFile);
          }}
        >
          {openFile.label(desk)}
        </button>
        <button type="button" className="plain-button first" onClick={close}>
          Close
        </button>
      </div>
    </Dialog>
  );
}
