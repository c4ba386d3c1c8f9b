import { formatNumber, type Reading } from '../../../core/units/index.ts';
import { fieldUnit, readField, type StockNumber } from '../../../state/stock/index.ts';
import { useDesk } from '../../context.tsx';
import { DimensionField } from '../../controls/DimensionField.tsx';
import { mmShown, readMm } from '../../measures.ts';
import { type Show, useShow } from '../../show.ts';

interface NumberFieldsProps {
  readonly numbers: readonly StockNumber[];
  /** Sets a field, or leaves it to the usual value when `value` is undefined; gives why not, or null. */
  readonly put: (number: StockNumber, value: number | undefined) => string | null;
}

/** Numbers of stock three abreast, to type or to drag; those that nobody gave are as usual and set lighter. */
export function NumberFields({ numbers, put }: NumberFieldsProps) {
  const { actions } = useDesk();
  const show = useShow();
  return (
    <div className="number-fields">
      {numbers.map((number) => {
        const { field, label, value, usual, given, step, least, most, about } = number;
        return (
          <div key={field} className={given ? undefined : 'usual'} title={about}>
            <DimensionField
              label={label}
              value={value}
              shown={shownOf(number, show)}
              others={given ? '' : 'usual'}
              read={(text) => readNumber(number, text, show)}
              step={step}
              least={least}
              most={most}
              onChange={(wanted) => put(number, wanted === usual ? undefined : wanted)}
              onDragStart={actions.beginGesture}
              onDragEnd={actions.settleGesture}
              onDragCancel={actions.bailGesture}
            />
          </div>
        );
      })}
    </div>
  );
}

function shownOf({ field, value }: StockNumber, show: Show): readonly [string, string] {
  const unit = fieldUnit(field);
  if (unit === 'mm' && show.lengthUnit === 'in') return mmShown(value, show).shown;
  const figure = formatNumber(value, { digits: 3, trim: true });
  return unit === '°' ? [`${figure}°`, ''] : [figure, unit];
}

/** What was typed, in the field's unit; an empty field asks for the usual value. */
function readNumber({ field, usual }: StockNumber, text: string, show: Show): Reading {
  if (text.trim() === '') {
    if (usual !== null) return { ok: true, value: usual, read: 'as usual' };
    return { ok: false, message: 'This has to be given.' };
  }
  if (fieldUnit(field) === 'mm') return readMm(text, show);
  const reading = readField(field, text);
  return reading.ok ? { ...reading, read: '' } : reading;
}
