import { useId } from 'react';
import type { QuantityGroup } from '../../../state/study/index.ts';

interface QuantityPickerProps {
  readonly groups: readonly QuantityGroup[];
  readonly chosen: string;
  readonly onChoose: (at: string) => void;
}

/** Picks one number of the railway, under what it belongs to. */
export function QuantityPicker({ groups, chosen, onChoose }: QuantityPickerProps) {
  const id = useId();
  return (
    <div className="study-field">
      <label htmlFor={id}>What is varied</label>
      <select id={id} value={chosen} onChange={(event) => onChoose(event.target.value)}>
        {groups.map(({ name, quantities }) => (
          <optgroup key={name} label={name}>
            {quantities.map(({ at, label }) => (
              <option key={at} value={at}>
                {label}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </div>
  );
}
