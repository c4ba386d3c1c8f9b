import { createPortal } from 'react-dom';
import { describeMend } from '../../../core/survey/index.ts';
import type { SurveyAnswer } from '../../../state/survey/index.ts';
import { useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';
import { AcrossWork, acrossPlace, wrongAcross } from './AcrossWork.tsx';
import { HandCheck } from './HandCheck.tsx';
import { useChosenSurvey } from './useSurvey.ts';
import { millimetres, workWords } from './words.ts';
import './workSheet.css';

/** As many supports as are worth a pencil. */
const mostChecks = 6;

/** Whether there is anything to take to the track: heights that can be put right, or a deck that lies wrongly across at heights that need nothing. */
export const hasWork = ({ mend, survey }: SurveyAnswer): boolean =>
  mend?.outcome === 'mended' || (mend?.outcome === 'nothing-to-mend' && wrongAcross(survey).length > 0);

/** The sheet to take to the track: seen on paper only. */
export function WorkSheet({ answer }: { readonly answer: SurveyAnswer }) {
  const { mend, task, trackId, survey } = answer;
  const show = useShow();
  const own = useChosenSurvey();
  const sceneName = useSession((state) => state.scene?.name ?? '');
  const trackName = useSession((state) => state.scene?.tracks.find(({ id }) => id === trackId)?.name ?? trackId);
  if (mend === null || !hasWork(answer)) return null;
  const words = describeMend(mend, task, show);
  const steps = mend.outcome === 'mended' ? mend.steps : [];
  const across = wrongAcross(survey).map((place) => acrossPlace(place, show));
  return createPortal(
    <article className="work-sheet" aria-hidden="true">
      <h1>{steps.length > 0 ? words.headline : `Set the deck right across at ${across.join(', ')}.`}</h1>
      <p>
        {sceneName}, {trackName}. Survey “{own?.name}”, {survey.input.readings.length} readings of{' '}
        {survey.input.supports.length} supports. Date: ____________
      </p>
      <p className="cautions">
        <b>Before you begin.</b> Switch off at the wall before reaching in. Cap the ends of rods. Lean on no deck that
        carries trains. Keep dust of MDF out of lungs. Anything on the mains is for qualified people; local rules come
        first.
      </p>
      {steps.length > 0 && (
        <table>
          <thead>
            <tr>
              <th>done</th>
              <th>support</th>
              <th>{task.adjuster.kind === 'nut' ? `turn the nut (${task.adjuster.thread})` : 'put under'}</th>
              <th>change</th>
              <th>rail top before</th>
              <th>rail top after</th>
              <th>read after the work</th>
            </tr>
          </thead>
          <tbody>
            {steps.map((step) => (
              <tr key={step.support}>
                <td>
                  <span className="tick" />
                </td>
                <th>{step.support + 1}</th>
                <td>{workWords(step, show)}</td>
                <td>{millimetres(step.change, show, 2, true)}</td>
                <td>{millimetres(step.before, show)}</td>
                <td>{millimetres(step.after, show)}</td>
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <ol className="how">
        {steps.length > 0 && (
          <li>Slacken the lock nut above the deck, turn the nut below, tighten. Mark the nut and count eighths.</li>
        )}
        {across.length > 0 && (
          <li>Across the deck, lift one side and let the other down by as much: the middle keeps its height.</li>
        )}
        <li>Let the strip settle, then measure the same places again and write what they show into the last column.</li>
      </ol>
      {steps.length === 0 && <p>{words.headline}</p>}
      {words.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <AcrossWork survey={survey} />
      {steps.length > 0 && (
        <section className="checks">
          <h2>Check by hand</h2>
          <p>
            By plan: what the reading would be on the line as planned, zero of the level and height of the laser line
            reckoned in. The last two columns should agree.
          </p>
          {steps.slice(0, mostChecks).map((step) => (
            <HandCheck key={step.support} answer={answer} step={step} />
          ))}
          {steps.length > mostChecks && (
            <p>The other {steps.length - mostChecks} supports are on the screen, under “Check it by hand”.</p>
          )}
        </section>
      )}
    </article>,
    document.body,
  );
}
