import { formatNumber, type Reading } from '../../core/units/index.ts';
import type { ShapeField, ShapeValues } from '../../state/shapes/index.ts';
import { DimensionField } from '../controls/DimensionField.tsx';
import {
  degreesShown,
  mmShown,
  percentShown,
  readDegrees,
  readMm,
  readPercent,
  readTurns,
  turnsShown,
} from '../measures.ts';
import { type Show, type Shown, useShow } from '../show.ts';

interface ShapeFieldsProps {
  readonly fields: readonly ShapeField[];
  readonly values: ShapeValues;
  readonly onChange: (id: string, value: number) => void;
}

interface Manner {
  readonly shown: (value: number, show: Show) => Shown;
  readonly read: (text: string, show: Show) => Reading;
  readonly step: number;
}

const manners: Readonly<Record<ShapeField['unit'], Manner>> = {
  mm: { shown: mmShown, read: readMm, step: 10 },
  percent: { shown: percentShown, read: (text, show) => readPercent(text, show, false), step: 0.05 },
  count: {
    shown: (value) => ({ shown: [formatNumber(value, { digits: 0 }), ''], other: '' }),
    read: (text) => {
      const value = Number(text.trim());
      return text.trim() !== '' && Number.isInteger(value)
        ? { ok: true, value, read: '' }
        : { ok: false, message: `“${text.trim().slice(0, 40)}” is no whole number.` };
    },
    step: 1,
  },
  degrees: { shown: degreesShown, read: readDegrees, step: 0.5 },
  turns: { shown: turnsShown, read: readTurns, step: 0.25 },
};

const nothing = () => undefined;

/** The numbers of a shape, typed as a builder says them. */
export function ShapeFields({ fields, values, onChange }: ShapeFieldsProps) {
  const show = useShow();
  return fields.map(({ id, name, unit, low, high }) => {
    const { shown, read, step } = manners[unit];
    const value = values[id];
    const inWords = shown(value, show);
    return (
      <DimensionField
        key={id}
        label={name}
        value={value}
        shown={inWords.shown}
        others={inWords.other}
        read={(text) => read(text, show)}
        step={step}
        least={low}
        most={high}
        onChange={(wanted) => {
          if (wanted < low || wanted > high) {
            const [from, to] = [low, high].map((bound) => shown(bound, show).shown.join('\u2009'));
            return `${from} to ${to} can be made.`;
          }
          onChange(id, wanted);
          return null;
        }}
        onDragStart={nothing}
        onDragEnd={nothing}
        onDragCancel={nothing}
      />
    );
  });
}
