import { useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';
import { useChosenSurvey, useSurvey, useSurveyActions } from './useSurvey.ts';
import { millimetres } from './words.ts';

/** This survey against an earlier one of the same track: what the work between them did. */
export function AgainPart() {
  const show = useShow();
  const own = useChosenSurvey();
  const surveys = useSession((state) => state.scene?.surveys);
  const against = useSurvey((state) => state.against);
  const actions = useSurveyActions();
  const others = (surveys ?? []).filter(({ id, track }) => id !== own?.id && track === own?.track);
  if (others.length === 0) return null;
  const changed = against?.changes?.filter(({ significant }) => significant) ?? [];
  const largest = [...(against?.changes ?? [])].sort((a, b) => Math.abs(b.statistic) - Math.abs(a.statistic))[0];
  return (
    <>
      <h3>Measured again</h3>
      <div className="sheet-field">
        <label htmlFor="survey-against">What changed since</label>
        <select
          id="survey-against"
          value={against?.id ?? ''}
          onChange={(event) => void actions.compareWith(event.target.value === '' ? null : event.target.value)}
        >
          <option value="">choose the earlier survey</option>
          {others.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      {against !== null && (
        <ul className="found" aria-label="What changed" aria-live="polite">
          {against.changes === null && <li>Working it out …</li>}
          {changed.map(({ support, change, deviation, statistic }) => (
            <li key={support}>
              Support {support + 1} went {change > 0 ? 'up' : 'down'} by {millimetres(Math.abs(change), show)} ±{' '}
              {millimetres(deviation, show)} ({Math.abs(statistic).toFixed(1)} standard deviations).
            </li>
          ))}
          {against.changes !== null && changed.length === 0 && largest !== undefined && (
            <li>
              Nothing changed that these readings show. The largest, support {largest.support + 1},{' '}
              {millimetres(largest.change, show, 2, true)} ± {millimetres(largest.deviation, show)}, is within chance.
            </li>
          )}
          {changed.length > 0 && <li>All other changes are within chance.</li>}
        </ul>
      )}
    </>
  );
}
