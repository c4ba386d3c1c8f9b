import { useState } from 'react';
import { useSession } from '../../context.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { useChosenSurvey, useSurvey, useSurveyActions } from './useSurvey.ts';

/** Which survey is on show; a new one, another name, or none of it. */
export function SurveyPicker() {
  const surveys = useSession((state) => state.scene?.surveys);
  const tracks = useSession((state) => state.scene?.tracks);
  const draft = useSurvey((state) => state.draft);
  const chosen = useChosenSurvey();
  const actions = useSurveyActions();
  const [naming, setNaming] = useState(false);
  const all = surveys ?? [];
  const trackName = tracks?.find(({ id }) => id === (chosen?.track ?? draft?.trackId))?.name;
  const begin = () => {
    setNaming(true);
    actions.begin(all.length === 0 ? 'First survey' : `Survey ${all.length + 1}`);
  };
  return (
    <>
      <header className="survey-head">
        <h2>{chosen?.name ?? draft?.name ?? 'Survey'}</h2>
        {trackName !== undefined && (
          <p className="quiet">
            {trackName}
            {chosen !== null && ` · ${chosen.readings.length} readings`}
          </p>
        )}
        <span className="acts">
          <button type="button" className="link" onClick={begin}>
            New survey
          </button>
          {(chosen ?? draft) !== null && (
            <button type="button" className="link" aria-expanded={naming} onClick={() => setNaming(!naming)}>
              Name
            </button>
          )}
          {chosen !== null && (
            <button type="button" className="link" onClick={() => actions.remove(chosen.id)}>
              Take out
            </button>
          )}
        </span>
      </header>
      {all.length + (draft === null ? 0 : 1) > 1 && (
        <div className="sheet-field">
          <label htmlFor="survey-on-show">Survey on show</label>
          <select id="survey-on-show" value={chosen?.id ?? ''} onChange={(event) => actions.choose(event.target.value)}>
            {draft !== null && <option value="">{draft.name}, not begun</option>}
            {all.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
      )}
      {naming && (chosen ?? draft) !== null && (
        <TypedField
          className="sheet-field"
          label="Name"
          value={chosen?.name ?? draft?.name ?? ''}
          onTake={(text) => {
            if (text === '') return 'A survey needs a name.';
            actions.rename(text);
            setNaming(false);
            return null;
          }}
        />
      )}
      {chosen === null && draft === null && (
        <div className="survey-empty">
          <p>
            Number the supports from the bottom, take forty readings with a level and a laser, and be told which nuts to
            turn.
          </p>
          <button type="button" className="sheet-button" onClick={begin}>
            Begin a survey
          </button>
        </div>
      )}
    </>
  );
}
