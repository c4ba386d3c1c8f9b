import { memo } from 'react';
import { riskById } from '../../../core/risks/index.ts';
import type { RiskSeries } from '../../../core/risks/types.ts';
import type { TrialView } from '../frame/trialView.ts';
import { chainageFigure, chainageUnit, marginFigure, marginUnit, type Show } from '../words.ts';
import { seriesPlaces } from './seriesPlaces.ts';
import { subjectWords } from './subjectWords.ts';

interface Props {
  readonly view: TrialView;
  readonly show: Show;
  readonly series: RiskSeries;
  readonly title: string;
}

/** A margin row as text: the least margin of each joint, vehicle or engine, where and when. */
export const MarginTable = memo(function MarginTable({ view, show, series, title }: Props) {
  const risk = riskById(series.risk);
  const places = seriesPlaces(series, view.trial.path);
  const rows = places.map((place, subject) => {
    let best = -1;
    for (let f = 0; f < place.length; f++) {
      const margin = series.margins[f * series.subjects + subject];
      if (!Number.isNaN(margin) && !(best >= 0 && series.margins[best * series.subjects + subject] <= margin)) best = f;
    }
    return { subject, frame: best };
  });
  return (
    <table>
      <caption>{title}: least margin</caption>
      <thead>
        <tr>
          <th scope="col">who</th>
          <th scope="col">margin, {marginUnit(risk.unit, show)}</th>
          <th scope="col">chainage, {chainageUnit(show)}</th>
          <th scope="col">time, s</th>
        </tr>
      </thead>
      <tbody>
        {rows
          .filter((row) => row.frame >= 0)
          .map((row) => (
            <tr key={row.subject}>
              <td>{subjectWords(view.naming, risk.subject, row.subject) || 'engine'}</td>
              <td>{marginFigure(series.margins[row.frame * series.subjects + row.subject], risk.unit, show)}</td>
              <td>{chainageFigure(places[row.subject][row.frame], show)}</td>
              <td>{view.motion?.time[row.frame].toFixed(1)}</td>
            </tr>
          ))}
      </tbody>
    </table>
  );
});
