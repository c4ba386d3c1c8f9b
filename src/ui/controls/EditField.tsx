import { useDesk } from '../context.tsx';
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
import { type Shown, useShow } from '../show.ts';
import { DimensionField } from './DimensionField.tsx';

interface EditFieldProps {
  readonly label: string;
  readonly measures: 'length' | 'angle' | 'count' | 'grade';
  /** mm, degrees, turns or per cent. */
  readonly value: number;
  readonly step: number;
  readonly least: number;
  readonly most: number;
  /** Makes it this; gives why not, or null. */
  readonly onChange: (value: number) => string | null;
  /** The value written another way than its measure would be. */
  readonly shown?: Shown['shown'] | undefined;
}

/** A number of the railway's plan, typed or dragged; a drag is one step of the history. */
export function EditField({ label, measures, value, step, least, most, onChange, shown }: EditFieldProps) {
  const { actions } = useDesk();
  const show = useShow();
  const written = {
    length: () => mmShown(value, show),
    angle: () => degreesShown(value),
    count: () => turnsShown(value),
    grade: () => percentShown(value, show),
  }[measures]();
  const read = {
    length: (text: string) => readMm(text, show),
    angle: readDegrees,
    count: readTurns,
    grade: (text: string) => readPercent(text, show, value < 0),
  }[measures];
  return (
    <DimensionField
      label={label}
      value={value}
      shown={shown ?? written.shown}
      others={written.other}
      read={read}
      step={step}
      least={least}
      most={most}
      onChange={onChange}
      onDragStart={actions.beginGesture}
      onDragEnd={actions.settleGesture}
      onDragCancel={actions.bailGesture}
    />
  );
}
