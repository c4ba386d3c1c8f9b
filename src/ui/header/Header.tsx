import { chooseRailway, newRailway, openFile, openPalette, redo, saveFile, undo } from '../../state/commands/index.ts';
import { useDesk, useHistory, useSession } from '../context.tsx';
import { CommandButton } from '../controls/CommandButton.tsx';
import { Segmented } from '../controls/Segmented.tsx';
import { RedoIcon, SearchIcon, UndoIcon } from './icons.tsx';
import { Mark } from './Mark.tsx';
import { StateLine } from './StateLine.tsx';
import './header.css';

/** Name, scene and its state in words, the way to every command, undo, and the two forms numbers are shown in. */
export function Header() {
  const { actions } = useDesk();
  const name = useSession((state) => state.scene?.name ?? '');
  const lengthUnit = useSession((state) => state.lengthUnit);
  const gradeForm = useSession((state) => state.gradeForm);
  const undone = useHistory((state) => state.past.at(-1)?.label ?? null);
  useHistory((state) => state.future[0]?.label ?? null);
  return (
    <header className="header">
      <h1 className="name">
        <Mark />
        <span>Gradewright</span>
      </h1>
      <div className="scene-name">
        <CommandButton command={chooseRailway} className="railway" wordsInside>
          <b>{name}</b>
          <span aria-hidden="true">▾</span>
        </CommandButton>
        <StateLine />
      </div>
      <CommandButton command={openPalette} className="command-entry" wordsInside>
        <SearchIcon />
        <span className="long">Find a place, a vehicle, or something to do</span>
        <span className="short">Find a place</span>
        <span className="key" aria-hidden="true">
          Ctrl K
        </span>
      </CommandButton>
      <div className="header-buttons">
        <CommandButton command={newRailway}>New</CommandButton>
        <CommandButton command={openFile}>Open</CommandButton>
        <CommandButton command={saveFile}>Save</CommandButton>
        <CommandButton command={undo} className="undo">
          <UndoIcon />
          <span className="long">Undo{undone ? ` ${undone}` : ''}</span>
          <span className="short">Undo</span>
        </CommandButton>
        <CommandButton command={redo}>
          <RedoIcon />
        </CommandButton>
      </div>
      <Segmented
        label="Lengths in"
        value={lengthUnit}
        onChange={actions.setLengthUnit}
        choices={[
          { value: 'mm', label: 'mm', spoken: 'millimetres' },
          { value: 'in', label: 'in', spoken: 'inches' },
        ]}
      />
      <Segmented
        label="Grades as"
        value={gradeForm}
        onChange={actions.setGradeForm}
        choices={[
          { value: 'one-in', label: '1 in n' },
          { value: 'percent', label: '%', spoken: 'per cent' },
        ]}
      />
    </header>
  );
}
