import { describeSurvey } from '../../../core/survey/index.ts';
import type { CrossLevel, Survey } from '../../../core/survey/types.ts';
import { placeWords } from '../../../state/index.ts';
import { type Show, useShow } from '../../show.ts';
import { millimetres } from './words.ts';

/** Where the deck is shown to lie otherwise across than planned. */
export const wrongAcross = ({ twist }: Survey): readonly CrossLevel[] =>
  twist?.places.filter(({ wrong }) => wrong) ?? [];

/** `support 3`, `2.40 m`. */
export const acrossPlace = ({ support, chainage }: CrossLevel, show: Show): string =>
  support === null ? placeWords(chainage, show) : `support ${support + 1}`;

/** What has to be done across the rails, on paper: place by place with room for a tick and for the reading after the work, and why. */
export function AcrossWork({ survey }: { readonly survey: Survey }) {
  const show = useShow();
  const places = wrongAcross(survey);
  if (places.length === 0) return null;
  return (
    <section className="across-work">
      <h2>Across the deck</h2>
      <table>
        <thead>
          <tr>
            <th>done</th>
            <th>place</th>
            <th>lift</th>
            <th>let down</th>
            <th>right rail over left, now</th>
            <th>by plan</th>
            <th>read after the work</th>
          </tr>
        </thead>
        <tbody>
          {places.map((place) => {
            const [up, down] = place.departure > 0 ? ['left', 'right'] : ['right', 'left'];
            const half = millimetres(Math.abs(place.departure) / 2, show);
            return (
              <tr key={place.chainage}>
                <td>
                  <span className="tick" />
                </td>
                <th>{acrossPlace(place, show)}</th>
                <td>
                  {up} side by {half}
                </td>
                <td>
                  {down} side by {half}
                </td>
                <td>{millimetres(place.level, show, 2, true)}</td>
                <td>{millimetres(place.planned, show, 2, true)}</td>
                <td />
              </tr>
            );
          })}
        </tbody>
      </table>
      {describeSurvey(survey, show).twist.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </section>
  );
}
