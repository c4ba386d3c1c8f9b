import { useId, useRef, useState } from 'react';
import { isCommandChord, leaveField } from '../../../controls/fieldKeys.ts';

/** The format's own bound. */
const mostLetters = 400;

interface WordsFieldProps {
  readonly value: string;
  /** Takes what was typed; null, or what is wrong with it. */
  readonly onTake: (text: string) => string | null;
}

/** What is said at a stop: a few lines of plain text, taken when they are left. */
export function WordsField({ value, onTake }: WordsFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [message, setMessage] = useState('');
  /** Escape has put away what was typed: leaving the field is not to take it. */
  const dropped = useRef(false);
  const take = () => {
    if (typed === null || dropped.current) return;
    const text = typed.trim();
    const refused = text === value ? null : onTake(text);
    setMessage(refused ?? '');
    if (refused === null) setTyped(null);
  };
  return (
    <div className="sheet-field">
      <label htmlFor={id}>Words</label>
      <textarea
        id={id}
        rows={4}
        maxLength={mostLetters}
        value={typed ?? value}
        aria-invalid={message !== ''}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (!isCommandChord(event)) event.stopPropagation();
          if (event.key !== 'Escape') return;
          setTyped(null);
          dropped.current = true;
          leaveField(event.currentTarget);
          dropped.current = false;
        }}
      />
      {message !== '' && (
        <span className="said wrong" role="alert">
          {message}
        </span>
      )}
    </div>
  );
}
