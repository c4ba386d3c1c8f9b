import { useMemo, useState } from 'react';
import { isCommandChord, leaveField } from '../../controls/fieldKeys.ts';
import { counted } from '../../show.ts';
import { useSurvey, useSurveyActions } from './useSurvey.ts';
import './tableBox.css';

const example = 'base = 300 mm\nsupport; grade %; height mm\n6; 2.3; 55.5';

/** Readings from a table: pasted, typed, or out of a file. What cannot be read is told by line. */
export function TableBox() {
  const actions = useSurveyActions();
  const [open, setOpen] = useState(false);
  const text = useSurvey((state) => state.table);
  const [refused, setRefused] = useState<string | null>(null);
  const read = useMemo(() => (text.trim() === '' ? null : actions.readTable(text)), [text, actions]);
  const count = read === null ? 0 : read.readings.length + read.crosses.length;
  const take = () => {
    const said = actions.takeTable();
    setRefused(said);
    if (said === null) setOpen(false);
  };
  return (
    <details className="table-box" open={open || text !== ''} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Paste a table, or take a file</summary>
      <textarea
        aria-label="Table of readings"
        rows={7}
        spellCheck={false}
        value={text}
        placeholder={example}
        onChange={(event) => actions.setTable(event.target.value)}
        onKeyDown={(event) => {
          if (!isCommandChord(event)) event.stopPropagation();
          if (event.key === 'Escape') leaveField(event.currentTarget);
        }}
      />
      <span className="acts">
        <label className="link file">
          Take a file
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            className="seen-by-readers"
            onChange={async (event) => {
              const [file] = event.target.files ?? [];
              if (file !== undefined) actions.setTable(await file.text());
            }}
          />
        </label>
      </span>
      {read !== null && (
        <>
          {read.problems.length > 0 && (
            <ul className="problems" aria-label="Lines that cannot be read">
              {read.problems.map(({ line, message }) => (
                <li key={`${line} ${message}`}>
                  <b>{line === 0 ? 'The table' : `Line ${line}`}</b> {message}
                </li>
              ))}
            </ul>
          )}
          <button type="button" className="sheet-button" disabled={count === 0} onClick={take}>
            Take {counted(count, 'reading')}
            {read.problems.length > 0 && `, leave ${counted(read.problems.length, 'line')} out`}
          </button>
        </>
      )}
      {refused !== null && (
        <p className="said wrong" role="alert">
          {refused}
        </p>
      )}
    </details>
  );
}
