import { Segmented } from '../../controls/Segmented.tsx';
import { LimitFields } from './LimitFields.tsx';
import { MendOutcome } from './MendOutcome.tsx';
import { useChosenSurvey, useSurvey, useSurveyActions } from './useSurvey.ts';

/** How the line is to be put right, what has to be kept, and what follows. */
export function MendPart() {
  const survey = useChosenSurvey();
  const worked = useSurvey((state) => state.worked);
  const objective = useSurvey((state) => state.objective);
  const mending = useSurvey((state) => state.mending);
  const mended = useSurvey((state) => state.mended);
  const actions = useSurveyActions();
  if (survey === null || worked === null) return <p className="quiet">Heights come first: take some readings.</p>;
  return (
    <>
      <h3>What counts</h3>
      <Segmented
        label="What counts"
        choices={[
          { value: 'fewest', label: 'Fewest supports' },
          { value: 'least', label: 'Least packing' },
          { value: 'flattest', label: 'Flattest' },
        ]}
        value={objective}
        onChange={actions.setObjective}
        wide
      />
      {mending ? (
        <div className="survey-progress">
          <progress className="progress-line" aria-label="Looking for the mending" />
          <button type="button" className="link" onClick={() => actions.stop()}>
            Stop
          </button>
        </div>
      ) : (
        <button type="button" className="sheet-button first" onClick={() => void actions.mend()}>
          {mended === null ? 'Find what to turn' : 'Look again'}
        </button>
      )}
      {mended !== null && <MendOutcome answer={mended} />}
      <LimitFields survey={survey} task={worked.task} count={worked.survey.input.supports.length} />
    </>
  );
}
