import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { useDesk, useSession } from '../context.tsx';
import { Dialog } from '../controls/Dialog.tsx';
import { type Entry, entriesOf } from './entries.ts';
import { matchScore } from './matching.ts';
import './palette.css';

/** Most that are listed at once; typing narrows them down. */
const longestList = 60;

/** Before anything is typed the long lists stay short, so that each group is seen. */
const firstOfGroup = 8;

function shortList(entries: readonly Entry[], typed: string): readonly Entry[] {
  if (typed.trim() === '') {
    const seen = new Map<string, number>();
    return entries.filter(({ group }) => {
      const count = (seen.get(group) ?? 0) + 1;
      seen.set(group, count);
      return count <= firstOfGroup;
    });
  }
  return entries
    .map((entry) => ({ entry, score: matchScore(`${entry.text} ${entry.group}`, typed) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .slice(0, longestList)
    .map(({ entry }) => entry);
}

/** Every command, place, vehicle and finding in one list that typing narrows down. */
export function Palette() {
  const open = useSession((state) => state.palette);
  return open ? <PaletteSheet /> : null;
}

function PaletteSheet() {
  const desk = useDesk();
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  const entries = useMemo(() => entriesOf(desk), [desk]);
  const shown = useMemo(() => shortList(entries, typed), [entries, typed]);
  const close = () => desk.actions.setPalette(false);

  const choose = (entry: Entry | undefined) => {
    if (!entry) return;
    close();
    entry.run();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 }[event.key];
    if (by !== undefined) {
      event.preventDefault();
      const next = Math.min(shown.length - 1, Math.max(0, at + by));
      setAt(next);
      list.current?.querySelector(`[data-row="${next}"]`)?.scrollIntoView({ block: 'nearest' });
    } else if (event.key === 'Enter') {
      event.preventDefault();
      choose(shown[at]);
    }
  };

  return (
    <Dialog title="Find or do" showTitle={false} onClose={close} className="palette">
      <input
        type="text"
        role="combobox"
        aria-label="Find a place, a vehicle, or something to do"
        aria-expanded="true"
        aria-controls="palette-list"
        aria-activedescendant={shown[at] ? `palette-${shown[at].id}` : undefined}
        aria-autocomplete="list"
        placeholder="Find a place, a vehicle, or something to do"
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(0);
        }}
        onKeyDown={onKeyDown}
      />
      <div ref={list} id="palette-list" role="listbox" aria-label="What there is">
        {shown.map((entry, index) => (
          <button
            type="button"
            key={entry.id}
            id={`palette-${entry.id}`}
            data-row={index}
            role="option"
            aria-selected={index === at}
            tabIndex={-1}
            onPointerMove={() => setAt(index)}
            onClick={() => choose(entry)}
          >
            <span className="group">{entry.group}</span>
            <span className="text">{entry.text}</span>
            {entry.group === 'To do' && entry.note ? (
              <kbd>{entry.note}</kbd>
            ) : (
              <span className="note">{entry.note}</span>
            )}
          </button>
        ))}
      </div>
      {shown.length === 0 && <p>Nothing here is called that.</p>}
    </Dialog>
  );
}
