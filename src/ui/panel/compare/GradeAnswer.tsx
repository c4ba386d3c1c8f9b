import type { GradeQuestion } from '../../../state/study/index.ts';
import { gradeShown, type Show, useShow } from '../../show.ts';
import { Running } from './Running.tsx';

/** The answer to "how steep": on the straight and in the tightest curve. */
export function GradeAnswer({ grade }: { readonly grade: GradeQuestion }) {
  const show = useShow();
  const { engine, kind, count, straight, curve, progress } = grade;
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
      {progress !== null && <Running label="Steepest grade" progress={progress} />}
    </>
  );
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
