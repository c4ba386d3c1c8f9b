import { useState } from 'react';
import type { BestState } from '../../../../state/study/index.ts';
import { gradeShown, lengthShown, type Show, useShow } from '../../../show.ts';
import { useStudy, useStudyActions } from '../useStudy.ts';
import { BasePicker } from '../variants/BasePicker.tsx';
import { HeightLimits, usualHeights } from './HeightLimits.tsx';
import { RoutePart } from './RoutePart.tsx';
import './best.css';

/** The best heights on the plan as it is, and the best routes over two numbers. */
export function BestPart() {
  return (
    <>
      <BasePicker />
      <HeightsPart />
      <RoutePart />
    </>
  );
}

/** The heights with the least ruling grade on the plan as it is, and whether no other can do better. */
function HeightsPart() {
  const best = useStudy((state) => state.best);
  const actions = useStudyActions();
  const [limits, setLimits] = useState(usualHeights);
  return (
    <>
      <h3>Best heights</h3>
      <p className="quiet about">
        Looks for the heights on this plan whose steepest grade, curves counted, is least. The ends keep their heights
        and grades.
      </p>
      <HeightLimits limits={limits} onChange={setLimits} />
      {best !== null && best.found === null ? (
        <div className="study-progress">
          <progress className="progress-line" aria-label="Best heights" />
          <button type="button" className="link" onClick={() => actions.stop()}>
            Stop
          </button>
        </div>
      ) : (
        <button
          type="button"
          className="study-button"
          disabled={!(limits.verticalRadiusMm > 0 && limits.steepestPercent > 0)}
          onClick={() => void actions.bestProfile(limits)}
        >
          Find the best heights
        </button>
      )}
      {best?.found && <Found best={best} found={best.found} />}
    </>
  );
}

const limitWords = {
  clearances: 'the headroom',
  steepest: 'the steepest grade',
  'vertical-radius': 'the vertical curves',
  grades: 'the grades at the ends',
} as const;

interface FoundProps {
  readonly best: BestState;
  readonly found: NonNullable<BestState['found']>;
}

function Found({ best, found }: FoundProps) {
  const show = useShow();
  const actions = useStudyActions();
  if (found.kind === 'impossible') {
    const way = found.inTheWay.map((limit) => limitWords[limit]);
    return (
      <p className="conclusion" role="status">
        No heights keep all that is asked{way.length > 0 ? `; they would without ${way.join(', or without ')}` : ''}.
      </p>
    );
  }
  const { rounded, proven, floor, kept } = found;
  return (
    <>
      <p className="conclusion" role="status">
        {proven ? 'Proven: ' : 'Best found: '}
        {grade(rounded.ruling, show)} ruling, where it is {grade(best.present, show)} now; no heights at all have less
        than {grade(floor, show)}.{kept ? '' : ' Rounded to what can be set, it misses a limit by a hair.'}
      </p>
      <table className="best-points">
        <caption className="seen-by-readers">Points of the best heights</caption>
        <thead>
          <tr>
            <th scope="col">at</th>
            <th scope="col">height</th>
            <th scope="col">curve</th>
          </tr>
        </thead>
        <tbody>
          {rounded.points.map(({ chainage, height, curve }) => (
            <tr key={chainage}>
              <td>{length(chainage, show)}</td>
              <td>{length(height, show)}</td>
              <td>{curve !== undefined && 'length' in curve ? length(curve.length, show) : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <span className="acts">
        <button type="button" className="link" onClick={() => void actions.keepBest('Best heights')}>
          Keep as a variant
        </button>
      </span>
    </>
  );
}

const length = (metres: number, show: Show): string => lengthShown(metres, show).shown.join('\u2009');

const grade = (ratio: number, show: Show): string =>
  gradeShown(ratio, show)
    .shown.filter((part) => part !== '')
    .join('\u2009');
