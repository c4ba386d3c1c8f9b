import { useEffect, useId, useRef, useState } from 'react';
import { movedRow, type RowChoice, type RowId } from './rowChoice.ts';
import './rowList.css';

export interface RowListProps {
  /** All rows there are, in the order they are shown. */
  readonly rows: readonly RowId[];
  readonly shown: readonly RowId[];
  readonly nameOf: (row: RowId) => string;
  /** The person chose for themselves. */
  readonly own: boolean;
  readonly choose: (choice: RowChoice | null) => void;
  readonly narrow?: boolean;
}

/** "9 of 11 rows": opens the list in which rows are folded, unfolded and moved. */
export function RowList({ rows, shown, nameOf, own, choose, narrow = false }: RowListProps) {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const id = useId();

  useEffect(() => {
    if (!open) return;
    box.current?.querySelector('input')?.focus();
    const outside = (event: PointerEvent) => {
      if (
        !(event.target instanceof Node) ||
        box.current?.contains(event.target) ||
        button.current?.contains(event.target)
      )
        return;
      setOpen(false);
    };
    document.addEventListener('pointerdown', outside);
    return () => document.removeEventListener('pointerdown', outside);
  }, [open]);

  const folded = (without?: RowId, plus?: RowId) =>
    new Set(rows.filter((row) => (row === plus || !shown.includes(row)) && row !== without));
  const close = () => {
    setOpen(false);
    button.current?.focus();
  };
  return (
    <div className="gwb-list-seat">
      <button
        ref={button}
        type="button"
        className="gwb-go gwb-list-button"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        {narrow ? '' : 'least margin, '}
        {shown.length} of {rows.length} rows
      </button>
      {open ? (
        // biome-ignore lint/a11y/noStaticElementInteractions: Escape closes the list wherever in it the focus is
        <div
          ref={box}
          id={id}
          className="gwb-list"
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.stopPropagation();
            close();
          }}
        >
          <ul>
            {rows.map((row, index) => (
              <li key={row}>
                <label>
                  <input
                    type="checkbox"
                    checked={shown.includes(row)}
                    onChange={(event) =>
                      choose({ order: rows, folded: event.target.checked ? folded(row) : folded(undefined, row) })
                    }
                  />
                  {nameOf(row)}
                </label>
                <button
                  type="button"
                  aria-label={`${nameOf(row)} up`}
                  disabled={index === 0}
                  onClick={() => choose({ order: movedRow(rows, row, -1), folded: folded() })}
                >
                  ▴
                </button>
                <button
                  type="button"
                  aria-label={`${nameOf(row)} down`}
                  disabled={index === rows.length - 1}
                  onClick={() => choose({ order: movedRow(rows, row, 1), folded: folded() })}
                >
                  ▾
                </button>
              </li>
            ))}
          </ul>
          <button type="button" className="gwb-list-reset" disabled={!own} onClick={() => choose(null)}>
            As many as fit, gravest first
          </button>
        </div>
      ) : null}
    </div>
  );
}
