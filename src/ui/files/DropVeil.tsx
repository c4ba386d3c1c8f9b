import { useEffect, useState } from 'react';
import { railwayFromLine } from '../../state/index.ts';
import { useDesk } from '../context.tsx';
import './files.css';

const carriesFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** A table of readings, when it holds no places; what is neither is taken for a scene. */
const isTable = (name: string): boolean => /\.(csv|tsv|txt)$/i.test(name);

/** A file may be dropped anywhere on the window; the veil says so while one is held over it. */
export function DropVeil() {
  const { actions, surveys } = useDesk();
  const [held, setHeld] = useState(false);
  useEffect(() => {
    // Entering a child fires before leaving its parent: only a count knows when the window itself was left.
    let inside = 0;
    const enter = (event: DragEvent) => {
      if (!carriesFile(event)) return;
      inside += 1;
      setHeld(true);
    };
    const leave = (event: DragEvent) => {
      if (!carriesFile(event)) return;
      inside -= 1;
      if (inside <= 0) setHeld(false);
    };
    const over = (event: DragEvent) => {
      if (carriesFile(event)) event.preventDefault();
    };
    const drop = async (event: DragEvent) => {
      if (!carriesFile(event)) return;
      event.preventDefault();
      inside = 0;
      setHeld(false);
      const file = event.dataTransfer?.files[0];
      if (!file) return;
      try {
        const text = await file.text();
        const railway = railwayFromLine(file.name, text);
        if (railway !== null) await actions.openFileText(railway.name, railway.text);
        else if (isTable(file.name)) surveys.actions.dropTable(text);
        else await actions.openFileText(file.name, text);
      } catch (error) {
        actions.report({
          title: `“${file.name}” could not be read`,
          lines: [error instanceof Error ? error.message : String(error)],
        });
      }
    };
    const ends = new AbortController();
    const { signal } = ends;
    window.addEventListener('dragenter', enter, { signal });
    window.addEventListener('dragleave', leave, { signal });
    window.addEventListener('dragover', over, { signal });
    window.addEventListener('drop', (event) => void drop(event), { signal });
    return () => ends.abort();
  }, [actions, surveys]);
  if (!held) return null;
  return (
    <div className="drop-veil">
      <p>Let go to open this scene file, to read this table of readings, or to lay track along this drawn line</p>
    </div>
  );
}
