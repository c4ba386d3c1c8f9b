import { asItIs } from '../../../../state/study/index.ts';
import { useStudy, useStudyActions } from '../useStudy.ts';

/** Which railway a study starts from: the one that is open, or one of its variants. Not there while there is only one. */
export function BasePicker() {
  const rows = useStudy((state) => state.rows);
  const base = useStudy((state) => state.base);
  const { setBase } = useStudyActions();
  if (rows.length < 2) return null;
  return (
    <div className="sheet-field">
      <label htmlFor="study-base">Starting from</label>
      <select
        id="study-base"
        value={base ?? ''}
        onChange={(event) => setBase(event.target.value === '' ? null : event.target.value)}
      >
        {rows.map(({ id, name, scene }) => (
          <option key={id ?? ''} value={id ?? ''} disabled={scene === null}>
            {id === null ? asItIs : name}
          </option>
        ))}
      </select>
    </div>
  );
}
