import type { CompareRow, Gauge } from '../../../state/study/index.ts';
import { distanceShown, gradeShown, lengthShown, type Show, useShow } from '../../show.ts';
import { useStudy, useStudyActions } from './useStudy.ts';
import { probeWords } from './words.ts';

/** The railway as it is and its variants: what each comes to, and what it takes. */
export function VariantList() {
  const show = useShow();
  const rows = useStudy((state) => state.rows);
  const gauge = useStudy((state) => state.gauge);
  const comparing = useStudy((state) => state.comparing);
  const actions = useStudyActions();
  return (
    <>
      <ul className="variants" aria-label="Variants">
        {rows.map((row) => (
          <VariantItem key={row.id ?? ''} row={row} gauge={gauge} show={show} />
        ))}
      </ul>
      {comparing === null ? (
        <button type="button" className="study-button" onClick={() => void actions.compare()}>
          {rows.length > 1 ? `Work out all ${rows.length}` : 'Work it out'}
        </button>
      ) : (
        <div className="study-progress">
          <progress className="progress-line" value={comparing} max={1} aria-label="Comparison" />
          <button type="button" className="link" onClick={() => actions.stop()}>
            Stop
          </button>
        </div>
      )}
    </>
  );
}

interface VariantItemProps {
  readonly row: CompareRow;
  readonly gauge: Gauge;
  readonly show: Show;
}

function VariantItem({ row: { id, name, scene, compared }, gauge, show }: VariantItemProps) {
  const actions = useStudyActions();
  const words = compared && probeWords(compared.probe, gauge, show);
  return (
    <li className={words && !words.passes ? 'fails' : undefined}>
      <span className="name">{name}</span>
      <b>{words === null ? 'not worked out' : words.verdict}</b>
      {words !== null && words.call !== '' && <span className="call">{words.call}</span>}
      {[...(compared?.tracks ?? [])].map(([track, measure]) => (
        <small key={track}>
          {[
            `${distanceShown(measure.length, show).shown.join('\u2009')} long`,
            `rises ${lengthShown(measure.rise, show).shown.join('\u2009')}`,
            `steepest ${gradeShown(measure.steepest, show).shown.join('\u2009')}`,
            `${lengthShown(measure.across, show).shown.join('\u2009')} by ${lengthShown(measure.along, show).shown.join('\u2009')}`,
          ].join(' · ')}
        </small>
      ))}
      {id !== null && (
        <span className="acts">
          {scene !== null && (
            <button type="button" className="link" onClick={() => void actions.adoptVariant(id)}>
              Make it the railway
            </button>
          )}
          <button type="button" className="link" onClick={() => void actions.dropVariant(id)}>
            Take out
          </button>
        </span>
      )}
    </li>
  );
}
