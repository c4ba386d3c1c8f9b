import { memo } from 'react';
import { gradeLines, plannedBreaks } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { chainageFigure, chainageUnit, gradeBothForms, lengthFigure, lengthUnit, type Show } from '../words.ts';

/** Departures smaller than this are not read out, m: what a careful builder calls right. */
const WORTH_SAYING = 0.0003;

/** The section as text: grades, heights where they meet, supports off their height. */
export const SectionTable = memo(function SectionTable({
  track,
  show,
}: {
  readonly track: Track;
  readonly show: Show;
}) {
  const supports = (track.spec.profile.strip?.supports ?? [])
    .map((support, index) => ({ ...support, number: (support.number ?? index) + 1 }))
    .filter(({ departure }) => Math.abs(departure) >= WORTH_SAYING);
  return (
    <table>
      <caption>Section</caption>
      <thead>
        <tr>
          <th scope="col">what</th>
          <th scope="col">chainage, {chainageUnit(show)}</th>
          <th scope="col">value</th>
        </tr>
      </thead>
      <tbody>
        {gradeLines(track).map((line) => (
          <tr key={`g${line.from}`}>
            <td>grade, {line.grade > 0 ? 'rising' : line.grade < 0 ? 'falling' : 'level'} with chainage</td>
            <td>
              {chainageFigure(line.from, show)} to {chainageFigure(line.to, show)}
            </td>
            <td>{gradeBothForms(line.grade, show)}</td>
          </tr>
        ))}
        {plannedBreaks(track).map((point) => (
          <tr key={`b${point.chainage}`}>
            <td>height where grades meet</td>
            <td>{chainageFigure(point.chainage, show)}</td>
            <td>
              {lengthFigure(point.height, show)} {lengthUnit(show)}
            </td>
          </tr>
        ))}
        {supports.map(({ number, chainage, departure }) => (
          <tr key={`s${chainage}`}>
            <td>support {number} off its height</td>
            <td>{chainageFigure(chainage, show)}</td>
            <td>
              {lengthFigure(departure, show, true)} {lengthUnit(show)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
});
