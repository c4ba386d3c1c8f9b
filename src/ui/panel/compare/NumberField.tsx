import { useId, useState } from 'react';
import { readField } from '../../../state/study/index.ts';
import { figure } from './words.ts';

interface NumberFieldProps {
  readonly label: string;
  /** Address of the field: it says the unit, and how a builder's words are read. */
  readonly at: string;
  readonly unit: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
}

/** A number of a field, typed plainly or as a builder says it. What cannot be read stays, with what is wrong about it. */
export function NumberField({ label, at, unit, value, onChange }: NumberFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [message, setMessage] = useState('');
  const take = () => {
    if (typed === null) return;
    const reading = readField(at, typed);
    if (!reading.ok) {
      setMessage(reading.message);
      return;
    }
    setTyped(null);
    setMessage('');
    onChange(reading.value);
  };
  return (
    <div className="study-field small">
      <label htmlFor={id}>{label}</label>
      <span className="line">
        <input
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          value={typed ?? figure(value)}
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
        <span className="unit">{unit}</span>
      </span>
      {message !== '' && (
        <span id={`${id}-said`} className="said wrong" role="alert">
          {message}
        </span>
      )}
    </div>
  );
}
