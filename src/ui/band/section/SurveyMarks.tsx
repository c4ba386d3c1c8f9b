import type { SurveyMark } from './surveyMarks.ts';
import './survey.css';

/** Estimated departures over the comb: a dot each, a thick bar of one standard deviation, a thin one of 95 %. */
export function SurveyMarks({ marks }: { readonly marks: readonly SurveyMark[] }) {
  return (
    <>
      {marks.map(({ key, x, y, near, far, wrong, mended }) => (
        <g key={key} className={wrong ? 'gwb-survey gwb-bad' : 'gwb-survey'}>
          {mended !== null && <path d={`M${x + 5},${y}V${mended}m-3,0h6`} className="gwb-ghost" />}
          <line x1={x} x2={x} y1={far[0]} y2={far[1]} className="gwb-survey-far" />
          <line x1={x} x2={x} y1={near[0]} y2={near[1]} className="gwb-survey-near" />
          <circle cx={x} cy={y} r={2} />
        </g>
      ))}
    </>
  );
}
