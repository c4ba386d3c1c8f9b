import type { Survey } from '../../../core/survey/types.ts';
import { useDesk } from '../../context.tsx';
import { useShow } from '../../show.ts';
import { millimetreFigure } from './words.ts';

/** Beyond this many standard deviations a 95 % bar does not reach the plan. */
const barReach = 1.96;

/** Every support: how far it stands off the plan, how surely, and whether that is shown. */
export function HeightTable({ survey }: { readonly survey: Survey }) {
  const show = useShow();
  const { actions } = useDesk();
  const wrong = new Set(survey.explanation.supports.map(({ support }) => support));
  return (
    <table className="survey-table heights">
      <caption className="seen-by-readers">Heights of the supports, {show.lengthUnit}</caption>
      <thead>
        <tr>
          <th scope="col">support</th>
          <th scope="col" className="number">
            off plan, {show.lengthUnit}
          </th>
          <th scope="col" className="number">
            ±
          </th>
          <th scope="col">shown</th>
        </tr>
      </thead>
      <tbody>
        {survey.estimate.supports.map(({ support, chainage, departure, deviation }) => {
          const seen = Number.isFinite(deviation);
          const off = wrong.has(support);
          const hint = seen && !off && deviation > 0 && Math.abs(departure) > barReach * deviation;
          return (
            <tr key={support} className={off ? 'off' : undefined}>
              <th scope="row">
                <button type="button" title="Go there" onClick={() => actions.goToPlace(chainage)}>
                  {support + 1}
                </button>
              </th>
              <td className="number">{seen ? millimetreFigure(departure, show, 2, true) : '–'}</td>
              <td className="number">{seen ? millimetreFigure(deviation, show) : 'unseen'}</td>
              <td>{off ? 'off' : deviation === 0 ? 'held' : hint ? 'not among so many' : ''}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
