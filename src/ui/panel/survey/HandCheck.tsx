import { useMemo } from 'react';
import { handCheck, turnsText } from '../../../core/survey/index.ts';
import type { Adjuster, ShimStep } from '../../../core/survey/types.ts';
import { formatGrade, formatNumber } from '../../../core/units/index.ts';
import type { SurveyAnswer } from '../../../state/survey/index.ts';
import { useShow } from '../../show.ts';
import { useChosenSurvey } from './useSurvey.ts';
import { millimetres, toolWords, whereWords } from './words.ts';

interface HandCheckProps {
  readonly answer: SurveyAnswer;
  readonly step: ShimStep;
}

/** One support with the readings that show it, and the sum from its height to the turns of its nut: to be followed with a pencil. */
export function HandCheck({ answer: { survey, task }, step }: HandCheckProps) {
  const show = useShow();
  const own = useChosenSurvey();
  // Readings across the deck have no part in the heights.
  const along = own?.readings.flatMap((reading, index) => (reading.kind === 'cross' ? [] : [{ reading, index }])) ?? [];
  const lines = useMemo(() => handCheck(survey, step.support), [survey, step.support]);
  const number = step.support + 1;
  const off = survey.explanation.departures[step.support];
  const deviation = survey.explanation.supports.find(({ support }) => support === step.support)?.deviation;
  return (
    <table className="survey-table hand-check">
      <caption>
        Support {number}: {off === 0 ? 'as planned' : `${millimetres(Math.abs(off), show)} ${off > 0 ? 'high' : 'low'}`}
        {deviation !== undefined && ` ± ${millimetres(deviation, show)}`}
        {sumWords(step, task.adjuster)}
      </caption>
      {lines.length > 0 && (
        <thead>
          <tr>
            <th scope="col">reading</th>
            <th scope="col" className="number">
              read
            </th>
            <th scope="col" className="number">
              by plan
            </th>
            <th scope="col" className="number">
              differs
            </th>
            <th scope="col" className="number">
              {number} makes
            </th>
          </tr>
        </thead>
      )}
      <tbody>
        {lines.map(({ reading, read, planned, made }) => {
          const { kind } = survey.input.readings[reading];
          const scene = along[reading];
          const figure = (value: number, signed: boolean) =>
            kind === 'grade'
              ? `${signed && value > 0 ? '+' : ''}${formatGrade(value, { form: 'percent', digits: 2 })}`
              : millimetres(value, show, 1, signed);
          return (
            <tr key={reading}>
              <td>
                {scene && `${scene.index + 1}, ${whereWords(scene.reading, show)}, `}
                {toolWords[kind].reads}
              </td>
              <td className="number">{figure(read, false)}</td>
              <td className="number">{figure(planned, false)}</td>
              <td className="number">{figure(read - planned, true)}</td>
              <td className="number">{figure(made, true)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** `; 2.81 mm ÷ 1.25 mm a turn = 2 1/4 turns down`: in mm, since threads are. */
function sumWords({ change, turns }: ShimStep, adjuster: Adjuster): string {
  if (adjuster.kind !== 'nut' || turns === null) return '';
  const [by, pitch] = [Math.abs(change), adjuster.pitch].map((value) => formatNumber(value * 1e3, { digits: 2 }));
  return `; ${by} mm ÷ ${pitch} mm a turn of ${adjuster.thread} = ${turnsText(Math.abs(turns))} ${change > 0 ? 'up' : 'down'}`;
}
