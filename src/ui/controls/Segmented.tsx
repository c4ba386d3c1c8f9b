import { useId } from 'react';
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
  /** Share the width evenly. */
  readonly wide?: boolean;
}

/** One of two or three, side by side: radio buttons in the shape of a switch. */
export function Segmented<T extends string>({ label, choices, value, onChange, wide }: SegmentedProps<T>) {
  const name = useId();
  return (
    <fieldset className={wide ? 'segmented wide' : 'segmented'}>
      <legend className="seen-by-readers">{label}</legend>
      {choices.map((choice) => (
        <label key={choice.value}>
          <input
            type="radio"
            name={name}
            checked={choice.value === value}
            aria-label={choice.spoken}
            onChange={() => onChange(choice.value)}
          />
          <span>{choice.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
