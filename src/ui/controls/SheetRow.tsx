import type { ReactNode } from 'react';

interface SheetRowProps {
  readonly name: ReactNode;
  readonly figure: string;
  /** Under the name: where it is, or what kind. */
  readonly note?: string;
  /** Under the figure: its other form. */
  readonly other?: string;
  readonly off?: boolean;
  /** Goes to the place the row is about. */
  readonly onGo?: () => void;
}

/** A row of a read-only sheet. */
export function SheetRow({ name, figure, note = '', other = '', off = false, onGo }: SheetRowProps) {
  const content = (
    <>
      <span>{name}</span>
      <span className="figure">{figure}</span>
      <small>{note}</small>
      <small>{other}</small>
    </>
  );
  const className = off ? 'sheet-row off' : 'sheet-row';
  return (
    <li>
      {onGo ? (
        <button type="button" className={className} onClick={onGo} title="Go there">
          {content}
        </button>
      ) : (
        <div className={className}>{content}</div>
      )}
    </li>
  );
}
