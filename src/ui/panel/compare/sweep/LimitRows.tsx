import { useId } from 'react';
import {
  type MeasureId,
  type MeasureLimit,
  measureById,
  measures,
  readAmount,
  usualBound,
} from '../../../../state/study/index.ts';
import { TypedField } from '../../../controls/TypedField.tsx';
import { useShow } from '../../../show.ts';
import { measureWords } from '../measureWords.ts';
import { useStudy, useStudyActions } from '../useStudy.ts';
import { MeasureOptions } from './MeasurePicker.tsx';

/** Where a limit begins that was just set: so much that it says nothing before the person does. */
const loose = { most: Number.POSITIVE_INFINITY, least: 0 } as const;

/** Limits of measures that count like a margin; one a measure, as many as are wanted. */
export function LimitRows() {
  const id = useId();
  const limits = useStudy((state) => state.limits);
  const actions = useStudyActions();
  const free = measures.filter((one) => !limits.some(({ measure }) => measure === one.id));
  const change = (at: number, to: MeasureLimit) => actions.setLimits(limits.with(at, to));
  return (
    <div className="study-limits">
      {limits.map((limit, at) => (
        <LimitRow
          key={limit.measure}
          limit={limit}
          onChange={(to) => change(at, to)}
          onRemove={() => actions.setLimits(limits.filter((one) => one !== limit))}
        />
      ))}
      <div className="sheet-field">
        <label className={limits.length === 0 ? undefined : 'seen-by-readers'} htmlFor={id}>
          And keeping
        </label>
        <select
          id={id}
          value=""
          onChange={({ target }) => {
            const measure = target.value as MeasureId;
            const bound = usualBound(measureById(measure));
            actions.setLimits([...limits, { measure, bound, amount: loose[bound] }]);
          }}
        >
          <option value="">{limits.length === 0 ? 'no other limit' : 'one more limit …'}</option>
          {free.length > 0 && <MeasureOptions without={limits.map(({ measure }) => measure)} />}
        </select>
      </div>
    </div>
  );
}

interface LimitRowProps {
  readonly limit: MeasureLimit;
  readonly onChange: (limit: MeasureLimit) => void;
  readonly onRemove: () => void;
}

function LimitRow({ limit, onChange, onRemove }: LimitRowProps) {
  const show = useShow();
  const measure = measureById(limit.measure);
  const words = limit.bound === 'most' ? 'at most' : 'at least';
  const open = limit.amount === loose[limit.bound];
  const take = (text: string): string | null => {
    const reading = readAmount(text.replace(/^R\s*(?=\d)/, ''), measure.unit);
    if (!reading.ok) return reading.message;
    onChange({ ...limit, amount: reading.value });
    return null;
  };
  return (
    <div className="study-limit">
      <TypedField
        className="sheet-field small"
        label={`${measure.title} ${words}`}
        value={open ? '' : measureWords(measure, limit.amount, show)}
        unit=""
        placeholder="any"
        onTake={take}
      />
      <button type="button" className="link" aria-label={`Take out: ${measure.title} ${words}`} onClick={onRemove}>
        Take out
      </button>
    </div>
  );
}
