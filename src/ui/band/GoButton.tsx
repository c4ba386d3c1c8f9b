import type { ReactNode } from 'react';

interface Props {
  readonly go: () => void;
  /** What it is that one goes to, said before the text. */
  readonly label: string;
  readonly marked?: boolean;
  readonly children: ReactNode;
}

/** One line of the right column: says where the least is, and goes there. */
export function GoButton({ go, label, marked = false, children }: Props) {
  return (
    <button type="button" className={marked ? 'gwb-go gwb-marked' : 'gwb-go'} onClick={go}>
      <span className="seen-by-readers">{label}: </span>
      {children}
    </button>
  );
}
