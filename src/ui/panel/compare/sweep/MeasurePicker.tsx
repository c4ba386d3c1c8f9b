import { useId } from 'react';
import { type MeasureId, measures } from '../../../../state/study/index.ts';
import { useStudy, useStudyActions } from '../useStudy.ts';

const groups = [
  { of: 'run', label: 'How it runs' },
  { of: 'track', label: 'What it takes' },
] as const;

/** The measures as choices of a list, under what they are of; some left out. */
export function MeasureOptions({ without = [] }: { readonly without?: readonly MeasureId[] }) {
  return groups.map(({ of, label }) => (
    <optgroup key={of} label={label}>
      {measures
        .filter((one) => one.of === of && !without.includes(one.id))
        .map(({ id, title }) => (
          <option key={id} value={id}>
            {title}
          </option>
        ))}
    </optgroup>
  ));
}

/** What the curve of a sweep and the lines of a map are of: the margins, or one measure. */
export function MeasurePicker() {
  const id = useId();
  const drawn = useStudy((state) => state.drawn);
  const actions = useStudyActions();
  return (
    <div className="sheet-field">
      <label htmlFor={id}>What is drawn</label>
      <select
        id={id}
        value={drawn ?? ''}
        onChange={({ target }) => actions.setDrawn(target.value === '' ? null : (target.value as MeasureId))}
      >
        <option value="">The closest margins</option>
        <MeasureOptions />
      </select>
    </div>
  );
}
