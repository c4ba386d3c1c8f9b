import { useState } from 'react';
import type { GradeQuestion } from '../../../../state/study/index.ts';
import { gradeShown, type Show, useShow } from '../../../show.ts';
import { Running } from '../Running.tsx';
import { SweepChart } from './SweepChart.tsx';

/** The answer to "how steep": on the straight and in the tightest curve. */
export function GradeAnswer({ grade }: { readonly grade: GradeQuestion }) {
  const show = useShow();
  const { engine, kind, count, straight, toPercent, curve, progress } = grade;
  return (
    <>
      {straight !== null && (
        <p className="conclusion" role="status">
          {progress === null ? '' : 'So far: '}
          {engine} with {count} × {kind} climbs {steepness(straight, show)} on straight track
          {curve === null
            ? '.'
            : `, ${steepness(curve.grade, show)} in a curve of ${curve.radiusMm}\u2009mm, the tightest of this track.`}
        </p>
      )}
      {straight !== null && toPercent !== null && (
        <GradeChart grade={grade} straight={straight} toPercent={toPercent} />
      )}
      {progress !== null && <Running label="Steepest grade" progress={progress} />}
    </>
  );
}

interface GradeChartProps {
  readonly grade: GradeQuestion;
  readonly straight: NonNullable<GradeQuestion['straight']>;
  readonly toPercent: number;
}

/** The curve behind the number: what the train has to spare on the straight, by even running, and the edge as the full runs found it. */
function GradeChart({ grade: { points }, straight: { passesPercent, failsPercent }, toPercent }: GradeChartProps) {
  const [chosen, setChosen] = useState<number | null>(null);
  const edges = passesPercent === null || failsPercent === null ? [] : [{ passes: passesPercent, fails: failsPercent }];
  const sweep = { points, gauge: 'all', limits: [], ask: { from: 0, to: toPercent }, line: { edges } } as const;
  return <SweepChart sweep={sweep} unit="%" title="Grade on straight track" chosen={chosen} onChoose={setChosen} />;
}

function steepness({ passesPercent, failsPercent }: NonNullable<GradeQuestion['straight']>, show: Show): string {
  if (passesPercent === null) return 'nothing, not even level track,';
  const words = (percent: number) => gradeShown(percent / 100, show);
  const { shown, other } = words(passesPercent);
  const form = [shown.filter((part) => part !== '').join('\u2009'), other.split(' · ')[0]].filter(
    (part) => part !== '',
  );
  return `${form.join(' (')}${form.length > 1 ? ')' : ''}${failsPercent === null ? ' and more' : ''}`;
}
