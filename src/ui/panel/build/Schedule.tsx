import type { SupportRow } from '../../../core/build/index.ts';
import type { Thread } from '../../../core/survey/index.ts';
import { formatNumber } from '../../../core/units/index.ts';
import type { TrackBuild } from '../../../state/build/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';
import { figureOf, riseWords, standingWords } from './words.ts';

interface ScheduleProps {
  readonly track: TrackBuild;
  readonly thread: Thread | null;
}

/** The height of every support, row by row; a press takes the playhead there. */
export function Schedule({ track, thread }: ScheduleProps) {
  const show = useShow();
  const { actions } = useDesk();
  const onShow = useSession((state) => state.trial?.legs === undefined && state.trial?.trackId === track.trackId);
  const place = (row: SupportRow) =>
    onShow ? (
      <button type="button" onClick={() => actions.goToPlace(row.chainage)}>
        {row.number}
      </button>
    ) : (
      row.number
    );
  return (
    <>
      <table className="build-table" aria-labelledby="build-heights">
        <thead>
          <tr>
            <th scope="col">support</th>
            <th scope="col" className="number">
              rail
            </th>
            <th scope="col" className="number">
              underside
            </th>
            <th scope="col" className="number">
              {thread === null ? 'rise' : `turns, ${thread}`}
            </th>
            <th scope="col" className="number">
              riser
            </th>
            <th scope="col">from</th>
          </tr>
        </thead>
        <tbody>
          {track.supports.map((row) => (
            <tr key={row.number} className={row.rounding ? 'rounding' : undefined}>
              <th scope="row">{place(row)}</th>
              <td className="number">{figureOf(row.rail, show)}</td>
              <td className="number">
                <b>{figureOf(row.underside, show)}</b>
              </td>
              <td className="number">{riseWords(row, thread, show)}</td>
              <td className="number">{row.riser === null ? '–' : figureOf(row.riser, show)}</td>
              <td>{standingWords(row.standing)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        {show.lengthUnit}; underside is what a support has to reach
        {track.supports.some((row) => row.rounding) && '; tinted rows are within a vertical curve'}
        {track.layers.width > 0 && `; strip ${formatNumber(track.layers.width * 1e3, { digits: 0 })} mm wide`}.
      </p>
    </>
  );
}
