import { type ProfileAsk, readField } from '../../../../state/study/index.ts';
import { TypedField } from '../../../controls/TypedField.tsx';
import { NumberField } from '../NumberField.tsx';
import { figure } from '../words.ts';

/** What heights are looked for within when nothing else is said. */
export const usualHeights: ProfileAsk = { verticalRadiusMm: 10_000, steepestPercent: 6 };

interface HeightLimitsProps {
  readonly limits: ProfileAsk;
  readonly onChange: (limits: ProfileAsk) => void;
}

/** What heights that are found have to keep. */
export function HeightLimits({ limits, onChange }: HeightLimitsProps) {
  return (
    <div className="study-range">
      <NumberField
        label="Vertical curves at least"
        at="verticalCurveRadiusMm"
        unit="mm"
        value={limits.verticalRadiusMm}
        onChange={(verticalRadiusMm) => onChange({ ...limits, verticalRadiusMm })}
      />
      <NumberField
        label="No grade steeper than"
        at="gradePercent"
        unit="%"
        value={limits.steepestPercent}
        onChange={(steepestPercent) => onChange({ ...limits, steepestPercent })}
      />
    </div>
  );
}

interface LimitFieldProps {
  readonly label: string;
  /** Address of a field whose words are read for it, in mm. */
  readonly at: string;
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
}

/** A length that is held, or left empty: then it is not looked at. */
export function LimitField({ label, at, value, onChange }: LimitFieldProps) {
  const take = (text: string): string | null => {
    if (text === '') {
      onChange(null);
      return null;
    }
    const reading = readField(at, text);
    if (!reading.ok) return reading.message;
    if (!(reading.value > 0)) return 'More than 0, or nothing.';
    onChange(reading.value);
    return null;
  };
  return (
    <TypedField
      className="sheet-field small"
      label={label}
      value={value === null ? '' : figure(value)}
      unit="mm"
      placeholder="any"
      onTake={take}
    />
  );
}
