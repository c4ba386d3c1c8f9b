import { type KeyboardEvent, useRef } from 'react';
import './segmented.css';

export interface Choice<T extends string> {
  readonly value: T;
  readonly label: string;
  /** Said to a screen reader instead of the label where that is too short to be understood. */
  readonly spoken?: string;
}

interface SegmentedProps<T extends string> {
  readonly label: string;
  readonly choices: readonly Choice<T>[];
  readonly value: T;
  readonly onChange: (value: T) => void;
  readonly disabled?: boolean;
  /** Share the width evenly. */
  readonly wide?: boolean;
}

/** One of two or three: a row of buttons that behaves as one stop of the Tab key, arrows choosing. */
export function Segmented<T extends string>({ label, choices, value, onChange, disabled, wide }: SegmentedProps<T>) {
  const row = useRef<HTMLDivElement>(null);
  const step = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    const at = choices.findIndex((choice) => choice.value === value);
    const next = (at + by + choices.length) % choices.length;
    onChange(choices[next].value);
    row.current?.querySelectorAll('button')[next]?.focus();
  };
  return (
    <div
      ref={row}
      className={wide ? 'segmented wide' : 'segmented'}
      role="radiogroup"
      aria-label={label}
      onKeyDown={step}
    >
      {choices.map((choice) => (
        <button
          key={choice.value}
          type="button"
          role="radio"
          aria-checked={choice.value === value}
          aria-label={choice.spoken}
          tabIndex={choice.value === value ? 0 : -1}
          disabled={disabled}
          onClick={() => choice.value !== value && onChange(choice.value)}
        >
          {choice.label}
        </button>
      ))}
    </div>
  );
}
