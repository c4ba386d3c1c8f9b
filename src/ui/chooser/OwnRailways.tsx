import { useMemo, useState } from 'react';
import {
  copyKept,
  type KeepOutcome,
  type KeptScene,
  openKept,
  renamedRailway,
  renameKept,
  sceneOfKept,
} from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { TypedField } from '../controls/TypedField.tsx';
import { Sketch } from '../shapes/Sketch.tsx';

/** Why the machine would not keep a railway. */
const notKept = {
  full: 'This machine is full: delete a railway here, or save this one as a file.',
  blocked: 'Another version of Gradewright is open in another window: close it there first.',
  forbidden: 'This browser keeps nothing here: save your railway as a file.',
} as const;

const whenWords = (at: number): string => new Date(at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });

/** The railways kept on this machine, each where it was left, with its earlier states. */
export function OwnRailways({ onClose }: { readonly onClose: () => void }) {
  const { kept } = useDesk();
  const [own, setOwn] = useState(kept.list);
  const [deleted, setDeleted] = useState<readonly KeptScene[]>([]);
  const refresh = () => setOwn(kept.list());
  if (own.length === 0 && deleted.length === 0) return null;
  const forget = async (entry: KeptScene) => {
    setDeleted(await kept.versions(entry.id));
    await kept.forget(entry.id);
    refresh();
  };
  const bringBack = async () => {
    for (const version of deleted) await kept.keep(version);
    setDeleted([]);
    refresh();
  };
  return (
    <section aria-label="Yours">
      <h3>Yours, kept on this machine</h3>
      {deleted[0] && (
        <p role="status">
          “{deleted[0].name}” is deleted.{' '}
          <button type="button" className="link" onClick={() => void bringBack()}>
            Bring it back
          </button>
        </p>
      )}
      <ul>
        {own.map((entry) => (
          <OwnRailway
            key={entry.id}
            entry={entry}
            onClose={onClose}
            onChanged={refresh}
            onForget={() => void forget(entry)}
          />
        ))}
      </ul>
    </section>
  );
}

interface OwnRailwayProps {
  readonly entry: KeptScene;
  readonly onClose: () => void;
  /** It was copied or renamed. */
  readonly onChanged: () => void;
  readonly onForget: () => void;
}

function OwnRailway({ entry, onClose, onChanged, onForget }: OwnRailwayProps) {
  const desk = useDesk();
  const { actions, kept, bundled } = desk;
  const isOpen = useSession(
    (state) => state.opened?.id === entry.id || (state.savedAt !== null && kept.last() === entry.id),
  );
  const [earlier, setEarlier] = useState<readonly KeptScene[] | null>(null);
  const [naming, setNaming] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const scene = useMemo(() => sceneOfKept(entry), [entry]);
  /** Says what the machine would not do. */
  const told = (outcome: KeepOutcome | null): void => {
    setTrouble(outcome === null ? 'It can no longer be read.' : outcome === 'kept' ? null : notKept[outcome]);
    onChanged();
  };
  const rename = (name: string): string | null => {
    try {
      if (scene) renamedRailway(scene, name);
    } catch (error) {
      return error instanceof Error ? error.message : String(error);
    }
    setNaming(false);
    void renameKept(entry, name, kept, Date.now()).then(told);
    return null;
  };
  const isExample = bundled.some((one) => one.scene.name === entry.name);
  const open = (version: KeptScene) => {
    onClose();
    void openKept(desk, version, kept).then((opened) => {
      if (!opened) actions.report({ title: `“${entry.name}” can no longer be read`, lines: [] });
    });
  };
  return (
    <li className="own-railway">
      <button type="button" className="choice" aria-current={isOpen ? 'true' : undefined} onClick={() => open(entry)}>
        {scene && <Sketch scene={scene} view="above" />}
        <span>{isExample ? `${entry.name}, as you changed it` : entry.name}</span>
        <small>changed {whenWords(entry.at)}</small>
      </button>
      <span className="own-acts">
        <button
          type="button"
          className="link"
          aria-expanded={earlier !== null}
          onClick={() => (earlier ? setEarlier(null) : void kept.versions(entry.id).then(setEarlier))}
        >
          Earlier
        </button>
        <button type="button" className="link" onClick={() => void copyKept(entry, kept).then(told)}>
          Copy
        </button>
        {!isOpen && scene && (
          <button type="button" className="link" aria-expanded={naming} onClick={() => setNaming(!naming)}>
            Rename
          </button>
        )}
        {!isOpen && (
          <button type="button" className="link" onClick={onForget}>
            Delete
          </button>
        )}
      </span>
      {trouble !== null && <p role="alert">{trouble}</p>}
      {naming && (
        <TypedField
          className="dimension-field text"
          label="New name, at once and for good"
          value={entry.name}
          onTake={rename}
        />
      )}
      {earlier && (
        <ul aria-label={`Earlier states of ${entry.name}`}>
          {earlier.map((version) => (
            <li key={version.at}>
              <button type="button" className="choice" onClick={() => open(version)}>
                <span>as it was {whenWords(version.at)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </li>
  );
}
