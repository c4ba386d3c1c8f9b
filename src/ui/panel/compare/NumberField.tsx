import { readField } from '../../../state/study/index.ts';
import { TypedField } from '../../controls/TypedField.tsx';
import { figure } from './words.ts';

interface NumberFieldProps {
  readonly label: string;
  /** Address of the field: it says the unit, and how a builder's words are read. */
  readonly at: string;
  readonly unit: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
}

/** A number of a field, typed plainly or as a builder says it. */
export function NumberField({ label, at, unit, value, onChange }: NumberFieldProps) {
  const take = (text: string): string | null => {
    const reading = readField(at, text);
    if (!reading.ok) return reading.message;
    onChange(reading.value);
    return null;
  };
  return <TypedField className="sheet-field small" label={label} value={figure(value)} unit={unit} onTake={take} />;
}
