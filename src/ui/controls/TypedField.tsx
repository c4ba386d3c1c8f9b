import { useId, useRef, useState } from 'react';
import { isCommandChord, leaveField, useSelectAgain } from './fieldKeys.ts';

interface TypedFieldProps {
  /** What the sheet calls its fields, for its own measures. */
  readonly className: string;
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  readonly placeholder?: string;
  /** Takes what was typed; null, or what is wrong with it. */
  readonly onTake: (text: string) => string | null;
}

/** A field that is taken when it is left; what cannot be taken stays, with what is wrong about it. */
export function TypedField({ className, label, value, unit = '', placeholder = '', onTake }: TypedFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [message, setMessage] = useState('');
  const [field, selectAgain] = useSelectAgain();
  /** Escape has put away what was typed: leaving the field is not to take it. */
  const dropped = useRef(false);
  /** False when what was typed cannot be taken. */
  const take = (): boolean => {
    if (typed === null || dropped.current) return true;
    const refused = typed.trim() === value ? null : onTake(typed.trim());
    setMessage(refused ?? '');
    if (refused === null) setTyped(null);
    return refused === null;
  };
  return (
    <div className={className}>
      <label htmlFor={id}>{label}</label>
      <span className="line">
        <input
          ref={field}
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          value={typed ?? value}
          placeholder={placeholder}
          aria-invalid={message !== ''}
          aria-describedby={message === '' ? undefined : `${id}-said`}
          onChange={(event) => setTyped(event.target.value)}
          onFocus={(event) => event.target.select()}
          onBlur={take}
          onKeyDown={(event) => {
            if (!isCommandChord(event)) event.stopPropagation();
            if (event.key === 'Enter' && take()) selectAgain();
            if (event.key === 'Escape') {
              setTyped(null);
              setMessage('');
              dropped.current = true;
              leaveField(event.currentTarget);
              dropped.current = false;
            }
          }}
        />
        {unit !== '' && <span className="unit">{unit}</span>}
      </span>
      {message !== '' && (
        <span id={`${id}-said`} className="said wrong" role="alert">
          {message}
        </span>
      )}
    </div>
  );
}
