import type { GradePoint, Track } from '../../../core/track/types.ts';
import { placeWords, radiusText } from '../../../state/index.ts';
import { useDesk } from '../../context.tsx';
import { SheetRow } from '../../controls/SheetRow.tsx';
import { gradeShown, lengthShown, type Show, useShow } from '../../show.ts';

function curveWords({ curve }: GradePoint, show: Show): string {
  if (!curve) return '';
  if ('length' in curve) return `vertical curve ${lengthShown(curve.length, show).shown.join('\u2009')}`;
  return `vertical curve ${radiusText(curve.radius, show)}`;
}

/** Where grades meet, with the height there, and the grade from each such place to the next. */
export function ProfileRows({ track }: { readonly track: Track }) {
  const { actions } = useDesk();
  const show = useShow();
  const { points } = track.spec.profile;
  return (
    <>
      <h3 id="profile-rows">Profile</h3>
      <ul className="rows" aria-labelledby="profile-rows">
        {points.map((point, index) => {
          const next = points[index + 1];
          const height = lengthShown(point.height, show);
          const grade = next && (next.height - point.height) / (next.chainage - point.chainage);
          const curve = curveWords(point, show);
          return [
            <SheetRow
              key={`at-${point.chainage}`}
              name={placeWords(point.chainage, show)}
              figure={height.shown.join('\u2009')}
              note={curve || 'height'}
              other={height.other}
              onGo={() => actions.goToPlace(point.chainage)}
            />,
            grade !== undefined && (
              <SheetRow
                key={`from-${point.chainage}`}
                name={Math.abs(grade) < 1e-5 ? '' : grade > 0 ? 'rising' : 'falling'}
                figure={gradeShown(Math.abs(grade), show).shown.join('\u2009')}
                other={gradeShown(Math.abs(grade), show).other}
              />
            ),
          ];
        })}
      </ul>
    </>
  );
}
