import { createPortal } from 'react-dom';
import { describeMend } from '../../../core/survey/index.ts';
import type { SurveyAnswer } from '../../../state/survey/index.ts';
import { useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';
import { useChosenSurvey } from './useSurvey.ts';
import { millimetres, workWords } from './words.ts';
import './workSheet.css';

/** Prints the work sheet alone. */
export function printWorkSheet(): void {
  const { body } = document;
  body.dataset.print = 'work-sheet';
  window.addEventListener('afterprint', () => delete body.dataset.print, { once: true });
  window.print();
}

/** The sheet to take to the track: seen on paper only. */
export function WorkSheet({ answer: { mend, task, trackId, survey } }: { readonly answer: SurveyAnswer }) {
  const show = useShow();
  const own = useChosenSurvey();
  const sceneName = useSession((state) => state.scene?.name ?? '');
  const trackName = useSession((state) => state.scene?.tracks.find(({ id }) => id === trackId)?.name ?? trackId);
  if (mend?.outcome !== 'mended') return null;
  const words = describeMend(mend, task, show);
  return createPortal(
    <article className="work-sheet" aria-hidden="true">
      <h1>{words.headline}</h1>
      <p>
        {sceneName}, {trackName}. Survey “{own?.name}”, {survey.input.readings.length} readings of{' '}
        {survey.input.supports.length} supports. Date: ____________
      </p>
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
          {mend.steps.map((step) => (
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
      {words.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <p>Slacken the lock nut first, turn, tighten; let the strip settle, then measure the same places again.</p>
      <p>
        <b>
          Switch off at the wall before reaching in; cap rod ends; keep off decks that carry load; no MDF dust in the
          lungs; local rules and qualified people first for anything on the mains.
        </b>
      </p>
    </article>,
    document.body,
  );
}
