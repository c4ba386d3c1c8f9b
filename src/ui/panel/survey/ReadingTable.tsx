import { useState } from 'react';
import type { SceneSurvey } from '../../../state/survey/index.ts';
import { isCommandChord } from '../../controls/fieldKeys.ts';
import { useShow } from '../../show.ts';
import { useSurvey, useSurveyActions } from './useSurvey.ts';
import { toolWords, valueWords, whereWords } from './words.ts';

/** A residual this many of its own deviations is worth a look: one in a thousand is that far out by chance. */
const worthALook = 3.29;

/** Every reading in the order it was taken; a number can be put right in its place. */
export function ReadingTable({ survey }: { readonly survey: SceneSurvey }) {
  const show = useShow();
  const actions = useSurveyActions();
  const worked = useSurvey((state) => (state.worked?.surveyId === state.chosen ? state.worked : null));
  const [edited, setEdited] = useState<number | null>(null);
  const [refused, setRefused] = useState('');
  // Readings across the deck have no part in the heights: what was worked out counts only those along the track.
  const along = survey.readings.flatMap(({ kind }, index) => (kind === 'cross' ? [] : [index]));
  const upToDate = worked !== null && worked.survey.input.readings.length === along.length;
  const fits = new Map(upToDate ? worked.survey.estimate.fits.map((fit) => [along[fit.reading], fit]) : []);
  const slips = new Set(
    upToDate ? worked.survey.explanation.slips.flatMap(({ readings }) => readings.map((one) => along[one])) : [],
  );
  const take = (index: number, text: string) => {
    const said = actions.setReading(index, text);
    setRefused(said ?? '');
    if (said === null) setEdited(null);
  };
  return (
    <table className="survey-table readings">
      <caption>Readings</caption>
      <thead>
        <tr>
          <th scope="col">#</th>
          <th scope="col">where</th>
          <th scope="col">what</th>
          <th scope="col" className="number">
            read
          </th>
          <th>
            <span className="seen-by-readers">take out</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {survey.readings.map((reading, index) => {
          const doubted = slips.has(index) || Math.abs(fits.get(index)?.normalised ?? 0) > worthALook;
          const name = `reading ${index + 1}, ${whereWords(reading, show)}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a reading is known by its place in the list and nothing else
            <tr key={index} className={doubted ? 'doubted' : undefined}>
              <td className="quiet">{index + 1}</td>
              <td>{whereWords(reading, show)}</td>
              <td className="quiet">
                {toolWords[reading.kind].reads}
                {reading.kind === 'grade' && reading.turned === true && ', turned'}
                {doubted && ' – look again'}
              </td>
              <td className="number">
                {edited === index ? (
                  <input
                    ref={(element) => element?.focus()}
                    type="text"
                    aria-label={`Number of ${name}`}
                    aria-invalid={refused !== ''}
                    defaultValue={valueWords(reading, show)}
                    onFocus={(event) => event.target.select()}
                    onBlur={(event) => take(index, event.target.value)}
                    onKeyDown={(event) => {
                      if (!isCommandChord(event)) event.stopPropagation();
                      if (event.key === 'Enter') take(index, event.currentTarget.value);
                      if (event.key === 'Escape') {
                        setRefused('');
                        setEdited(null);
                      }
                    }}
                  />
                ) : (
                  <button
                    type="button"
                    aria-label={`${valueWords(reading, show)}: change ${name}`}
                    onClick={() => setEdited(index)}
                  >
                    {valueWords(reading, show)}
                  </button>
                )}
                {edited === index && refused !== '' && (
                  <span className="said wrong" role="alert">
                    {refused}
                  </span>
                )}
              </td>
              <td>
                <button
                  type="button"
                  className="remove"
                  aria-label={`Take ${name} out`}
                  onClick={() => actions.removeReading(index)}
                >
                  ×
                </button>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
