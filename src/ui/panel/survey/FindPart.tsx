import { describeSurvey } from '../../../core/survey/index.ts';
import { TypedField } from '../../controls/TypedField.tsx';
import { useShow } from '../../show.ts';
import { AgainPart } from './AgainPart.tsx';
import { HeightTable } from './HeightTable.tsx';
import { useChosenSurvey, useSurvey, useSurveyActions } from './useSurvey.ts';
import { readSupports } from './words.ts';

/** What the readings say: which supports are off, which readings slipped, what stays open, and what to read next. */
export function FindPart() {
  const show = useShow();
  const survey = useChosenSurvey();
  const worked = useSurvey((state) => state.worked);
  const working = useSurvey((state) => state.working);
  const actions = useSurveyActions();
  if (survey === null) return <p className="quiet">There are no readings yet.</p>;
  if (worked === null) return <p className="quiet">{working ? 'Working the heights out …' : 'No heights yet.'}</p>;
  const words = describeSurvey(worked.survey, show);
  const { noiseExplains, supports } = worked.survey.explanation;
  const count = worked.survey.input.supports.length;
  const leans = worked.survey.twist?.places.some(({ wrong }) => wrong) ?? false;
  return (
    <div aria-busy={working}>
      <p className={noiseExplains ? 'verdict' : 'verdict off'} role="status">
        {noiseExplains ? 'Noise explains it: no shim advised.' : offWords(supports.map(({ support }) => support + 1))}
      </p>
      <p className="evidence">{words.verdict}</p>
      {words.supports.length > 0 && (
        <ul className="found" aria-label="Supports that are off">
          {words.supports.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {words.slips.length > 0 && (
        <>
          <h3>Slips found</h3>
          <ul className="found" aria-label="Slips found">
            {words.slips.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {words.twist.length > 0 && (
        <>
          <h3>Across the deck</h3>
          <ul className="found" aria-label="Across the deck">
            {words.twist.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {words.next !== null && (
        <>
          <h3>The reading that would tell most</h3>
          <p className="evidence">{words.next}</p>
          <button type="button" className="sheet-button" onClick={() => actions.takeNext()}>
            Take it now
          </button>
        </>
      )}
      <h3>Heights</h3>
      <p className="quiet">
        By these readings alone. In the section below: dots over the comb of departures, thick bars one standard
        deviation, thin bars 95 %.
      </p>
      <HeightTable survey={worked.survey} />
      <p className="evidence">{words.reach}</p>
      {words.open.map((sentence) => (
        <p key={sentence} className="evidence">
          {sentence}
        </p>
      ))}
      <TypedField
        className="sheet-field"
        label="Supports known to stand as planned"
        value={(survey.fixed ?? []).join(', ')}
        placeholder="none: such as 1, 25"
        onTake={(text) => {
          const list = readSupports(text, count);
          if (list === null) return `Write numbers of supports from 1 to ${count}.`;
          actions.setFixed(list);
          return null;
        }}
      />
      <AgainPart />
      {((!noiseExplains && supports.length > 0) || leans) && (
        <button type="button" className="sheet-button" onClick={() => void actions.putEstimate()}>
          Use the estimate as the as-built railway
        </button>
      )}
    </div>
  );
}

const offWords = (numbers: readonly number[]): string => {
  const sorted = [...numbers].sort((a, b) => a - b);
  if (sorted.length === 0) return 'The line is built off as a whole.';
  if (sorted.length === 1) return `Support ${sorted[0]} is off.`;
  return `Supports ${sorted.slice(0, -1).join(', ')} and ${sorted.at(-1)} are off.`;
};
