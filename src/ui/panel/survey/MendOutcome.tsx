import { describeMend, describeSurvey, limitAmount, limitWords } from '../../../core/survey/index.ts';
import type { SurveyAnswer } from '../../../state/survey/index.ts';
import { printOnly } from '../../printOnly.ts';
import { useShow } from '../../show.ts';
import { wrongAcross } from './AcrossWork.tsx';
import { EaseButtons } from './EaseButtons.tsx';
import { HandCheck } from './HandCheck.tsx';
import { ShimTable } from './ShimTable.tsx';
import { useSurveyActions } from './useSurvey.ts';
import { hasWork, WorkSheet } from './WorkSheet.tsx';

/** What the mending comes to: the table of work with its proof, why nothing need be done, or which limits clash. */
export function MendOutcome({ answer }: { readonly answer: SurveyAnswer }) {
  const show = useShow();
  const actions = useSurveyActions();
  const { mend, task, survey } = answer;
  if (mend === null) return null;
  const words = describeMend(mend, task, show);
  const before = mend.outcome === 'mended' ? mend.before : mend.checks;
  const after = mend.outcome === 'mended' ? mend.after : [];
  return (
    <>
      <p className={mend.outcome === 'nothing-to-mend' ? 'verdict' : 'verdict off'} role="status">
        {words.headline}
      </p>
      {mend.outcome === 'mended' && <ShimTable steps={mend.steps} task={task} />}
      {words.notes.map((note) => (
        <p key={note} className="evidence">
          {note}
        </p>
      ))}
      {mend.outcome === 'impossible' && <EaseButtons mend={mend} />}
      {mend.outcome === 'mended' && (
        <details className="hand-checks">
          <summary>Check it by hand</summary>
          <p className="quiet">
            By plan: what the reading would be on the line as planned, zero of the level and height of the laser line
            reckoned in. The last two columns should agree.
          </p>
          {mend.steps.map((step) => (
            <HandCheck key={step.support} answer={answer} step={step} />
          ))}
        </details>
      )}
      {wrongAcross(survey).length > 0 && (
        <>
          <h3>Across the deck</h3>
          <ul className="found" aria-label="Across the deck">
            {describeSurvey(survey, show).twist.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {hasWork(answer) && (
        <div className="survey-buttons">
          {mend.outcome === 'mended' && (
            <button type="button" className="sheet-button first" onClick={() => void actions.putMended()}>
              Set supports as mended
            </button>
          )}
          <button type="button" className="sheet-button" onClick={() => void actions.putEstimate()}>
            Use the estimate as the as-built railway
          </button>
          <button type="button" className="sheet-button" onClick={() => printOnly('work-sheet')}>
            Print the work sheet
          </button>
          <WorkSheet answer={answer} />
        </div>
      )}
      <table className="survey-table limits">
        <caption className="seen-by-readers">Limits</caption>
        <thead>
          <tr>
            <th scope="col">limit</th>
            <th scope="col" className="number">
              now
            </th>
            {after.length > 0 && (
              <th scope="col" className="number">
                then
              </th>
            )}
            <th scope="col" className="number">
              allowed
            </th>
          </tr>
        </thead>
        <tbody>
          {before.map(({ limit, value, bound, holds }) => {
            const then = after.find((check) => check.limit === limit);
            return (
              <tr key={limit} className={holds ? undefined : 'off'}>
                <th scope="row">{limitWords[limit].replace(/^the /, '')}</th>
                <td className="number">{limitAmount(limit, value, show)}</td>
                {after.length > 0 && (
                  <td className="number kept">{then === undefined ? '' : limitAmount(limit, then.value, show)}</td>
                )}
                <td className="number kept">{limitAmount(limit, bound, show)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}
