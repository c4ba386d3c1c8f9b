import { placeWords } from '../../../state/index.ts';
import {
  addProfilePoint,
  type ProfileChange,
  profileHeights,
  removeProfilePoint,
  type SceneTrack,
  setProfilePoint,
  trackLengthMm,
} from '../../../state/routeEdits/index.ts';
import { useDesk } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { useShow } from '../../show.ts';

interface ProfileRowsProps {
  readonly track: SceneTrack;
  readonly chosen: number | null;
  readonly onChoose: (point: number | null) => void;
}

/** Grades and heights that can be dragged to, per cent and mm: the format's own bounds. */
const steepest = 50;
const highestMm = 10_000;
const longestMm = 200_000;
const largestRadiusMm = 10_000_000;
/** Changes of grade below this have no vertical curve, as a share: 0.01 mm in a metre. */
const sameGrade = 1e-5;

/** Every point of the heights with its place, height and vertical curve, and between them the grades. */
export function ProfileRows({ track, chosen, onChoose }: ProfileRowsProps) {
  const { actions } = useDesk();
  const show = useShow();
  const points = profileHeights(track);
  const end = trackLengthMm(track);
  const grades = points.map((point, index) => {
    const before = points[index - 1];
    return before ? (point.heightMm - before.heightMm) / (point.atMm - before.atMm) : Number.NaN;
  });
  const put = (index: number, words: string, change: ProfileChange) =>
    actions.attempt(`${words} at ${placeWords(points[index].atMm / 1000, show)}`, (scene) =>
      setProfilePoint(scene, track.id, index, change),
    );
  const addAt = roomiest(
    points.map(({ atMm }) => atMm),
    end,
  );
  return (
    <>
      <h3 id="profile-rows">Profile</h3>
      <ol className="edit-rows" aria-labelledby="profile-rows">
        {points.map((point, index) => {
          const { verticalCurveLengthMm: length, verticalCurveRadiusMm: radius } = track.profile[index];
          const change = Math.abs((grades[index + 1] ?? Number.NaN) - grades[index]);
          const bends = change > sameGrade;
          const curveMm = length ?? (radius !== undefined && bends ? radius * change : 0);
          const radiusMm = radius ?? (length !== undefined && bends ? length / change : 0);
          const lowest = points[index - 1]?.atMm ?? 0;
          const highest = points[index + 1]?.atMm ?? end;
          return [
            index > 0 && (
              // biome-ignore lint/suspicious/noArrayIndexKey: points are told apart by their order alone
              <li key={`grade-${index}`} className="grade-row">
                <Segmented
                  label={`Between points ${index} and ${index + 1} the line`}
                  value={grades[index] < 0 ? 'falls' : 'rises'}
                  onChange={() => void put(index, 'direction', { gradePercent: -grades[index] * 100 })}
                  choices={[
                    { value: 'rises', label: 'rises' },
                    { value: 'falls', label: 'falls' },
                  ]}
                />
                <div className="fields">
                  <EditField
                    label={`Grade over ${placeWords((point.atMm - points[index - 1].atMm) / 1000, show)}`}
                    measures="grade"
                    value={Math.round(grades[index] * 1e8) / 1e6}
                    step={0.05}
                    least={-steepest}
                    most={steepest}
                    onChange={(gradePercent) => put(index, 'grade', { gradePercent })}
                  />
                </div>
              </li>
            ),
            // biome-ignore lint/suspicious/noArrayIndexKey: points are told apart by their order alone
            <li key={`point-${index}`} className={chosen === index ? 'edit-row chosen' : 'edit-row'} data-point={index}>
              <button
                type="button"
                className="row-head"
                aria-pressed={chosen === index}
                onClick={() => onChoose(chosen === index ? null : index)}
              >
                <i>{index + 1}</i>
                <b>Point</b>
                {track.profile[index].at && <small>{relativeWords(track.profile[index].at)}</small>}
              </button>
              <div className="fields four">
                <EditField
                  label="At"
                  measures="length"
                  value={Math.round(point.atMm * 1e4) / 1e4}
                  step={10}
                  least={lowest}
                  most={highest}
                  onChange={(atMm) => put(index, 'place of the grade point', { atMm })}
                />
                <EditField
                  label="Height"
                  measures="length"
                  value={Math.round(point.heightMm * 1e4) / 1e4}
                  step={1}
                  least={-highestMm}
                  most={highestMm}
                  onChange={(heightMm) => put(index, 'height', { heightMm })}
                />
                {bends && (
                  <>
                    <EditField
                      label="Curve over"
                      measures="length"
                      value={Math.round(curveMm * 10) / 10}
                      step={20}
                      least={0}
                      most={longestMm}
                      shown={curveMm === 0 ? ['none', ''] : undefined}
                      onChange={(value) => put(index, 'vertical curve', { verticalCurveLengthMm: value || null })}
                    />
                    <EditField
                      label="Its radius"
                      measures="length"
                      value={Math.round(radiusMm)}
                      step={500}
                      least={0}
                      most={largestRadiusMm}
                      shown={radiusMm === 0 ? ['–', ''] : undefined}
                      onChange={(value) => put(index, 'vertical curve', { verticalCurveRadiusMm: value || null })}
                    />
                  </>
                )}
              </div>
              {chosen === index && (
                <Refusable
                  acts={[
                    {
                      words: 'Go there',
                      act: () => {
                        actions.goToPlace(point.atMm / 1000);
                        return null;
                      },
                    },
                    {
                      words: 'Remove',
                      act: () =>
                        actions.attempt('removal of a grade point', (scene) =>
                          removeProfilePoint(scene, track.id, index),
                        ),
                    },
                  ]}
                />
              )}
            </li>,
          ];
        })}
      </ol>
      <div className="add-row">
        <span>Add a point</span>
        <Refusable
          acts={[
            {
              words: `at ${placeWords(addAt / 1000, show)}`,
              spoken: 'Add a grade point in the widest gap',
              act: () => {
                const index = points.findIndex(({ atMm }) => atMm > addAt);
                const why = actions.attempt('new grade point', (scene) => addProfilePoint(scene, track.id, addAt));
                if (why === null) onChoose(index < 0 ? points.length : index);
                return why;
              },
            },
          ]}
        />
      </div>
    </>
  );
}

/** Where a further point is likeliest wanted, mm: the middle of the widest gap, to a whole cm. */
function roomiest(places: readonly number[], end: number): number {
  const ends = [0, ...places, end];
  let best = 1;
  for (let k = 1; k < ends.length; k++) if (ends[k] - ends[k - 1] > ends[best] - ends[best - 1]) best = k;
  return Math.round((ends[best] + ends[best - 1]) / 20) * 10;
}

/** A place that moves along with an element, in words. */
function relativeWords({ startOf, endOf, plusMm = 0 }: NonNullable<SceneTrack['profile'][number]['at']>): string {
  const further = plusMm === 0 ? '' : ` ${plusMm > 0 ? '+' : '−'} ${Math.abs(Math.round(plusMm * 10) / 10)}\u2009mm`;
  return `${startOf === undefined ? 'end' : 'start'} of ${startOf ?? endOf}${further}`;
}
