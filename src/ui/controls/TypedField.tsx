import { useId, useState } from 'react';

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
  const take = () => {
    if (typed === null) return;
    const refused = typed.trim() === value ? null : onTake(typed.trim());
    setMessage(refused ?? '');
    if (refused === null) setTyped(null);
  };
  return (
    <div className={className}>
      <label htmlFor={id}>{label}</label>
      <span className="line">
        <input
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
            if (!event.ctrlKey && !event.metaKey) event.stopPropagation();
            if (event.key === 'Enter') take();
            if (event.key === 'Escape') {
              setTyped(null);
              setMessage('');
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
