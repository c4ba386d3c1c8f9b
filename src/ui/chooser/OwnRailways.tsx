import { useMemo, useState } from 'react';
import { copyKept, type KeptScene, openKept, sceneOfKept } from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { Sketch } from '../shapes/Sketch.tsx';

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
            onCopied={refresh}
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
  readonly onCopied: () => void;
  readonly onForget: () => void;
}

function OwnRailway({ entry, onClose, onCopied, onForget }: OwnRailwayProps) {
  const desk = useDesk();
  const { actions, kept, bundled } = desk;
  const isOpen = useSession(
    (state) => state.opened?.id === entry.id || (state.savedAt !== null && kept.last() === entry.id),
  );
  const [earlier, setEarlier] = useState<readonly KeptScene[] | null>(null);
  const scene = useMemo(() => sceneOfKept(entry), [entry]);
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
        <button type="button" className="link" onClick={() => void copyKept(entry, kept).then(onCopied)}>
          Copy
        </button>
        {!isOpen && (
          <button type="button" className="link" onClick={onForget}>
            Delete
          </button>
        )}
      </span>
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
