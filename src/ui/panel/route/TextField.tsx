import { useId, useState } from 'react';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  /** Makes it this; gives why not, or null. */
  readonly onChange: (value: string) => string | null;
}

/** A name that can be typed anew: Enter or leaving the field keeps it, Escape brings the old one back. */
export function TextField({ label, value, onChange }: TextFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const take = () => {
    if (typed === null) return;
    const refused = typed === value ? null : onChange(typed);
    setWhy(refused);
    if (refused === null) setTyped(null);
  };
  return (
    <div className="dimension-field text">
      <label htmlFor={id}>{label}</label>
      <span className="line">
        <input
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          maxLength={80}
          value={typed ?? value}
          aria-invalid={why !== null}
          aria-describedby={`${id}-said`}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={take}
          onKeyDown={(event) => {
            const command = event.ctrlKey || event.metaKey;
            if (!command || typed !== null) event.stopPropagation();
            if (event.key === 'Enter') take();
            if (event.key === 'Escape') {
              setTyped(null);
              setWhy(null);
            }
          }}
        />
      </span>
      <span id={`${id}-said`} className="said wrong" role={why === null ? undefined : 'alert'}>
        {why}
      </span>
    </div>
  );
}
