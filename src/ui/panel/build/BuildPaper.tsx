import { createPortal } from 'react-dom';
import type { Thread } from '../../../core/survey/index.ts';
import type { BuildPlan } from '../../../state/build/index.ts';
import { useShow } from '../../show.ts';
import { PieceList } from './PieceList.tsx';
import { SheetDrawing } from './SheetDrawing.tsx';
import { TurnWords } from './TurnWords.tsx';
import { figureOf, riseWords, standingWords } from './words.ts';
import './buildPaper.css';

interface BuildPaperProps {
  readonly plan: BuildPlan;
  readonly thread: Thread | null;
  /** Of the railway. */
  readonly name: string;
}

/** The paper to take to the saw and to the supports, all tracks: seen on paper only. */
export function BuildPaper({ plan, thread, name }: BuildPaperProps) {
  const show = useShow();
  return createPortal(
    <article className="build-paper" aria-hidden="true">
      <h1>{name}: what to build</h1>
      <p>
        Heights are as planned, {show.lengthUnit} from the datum, vertical curves included. Date: ____________ Set by:
        ____________
      </p>
      <p className="cautions">
        <b>Before you begin.</b> Guards on saws, work clamped, eyes covered. Keep dust of MDF and plywood out of lungs.
        Cap the ends of rods. Whatever carries trains over a drop is guarded at its edge. Shelves want fixings made for
        that wall. Anything on the mains is for qualified people; local rules come first.
      </p>
      {plan.tracks.map((track, index) => (
        <section key={track.trackId}>
          <h2>{track.trackName}</h2>
          <TurnWords helices={track.helices} />
          <table>
            <thead>
              <tr>
                <th>done</th>
                <th>support</th>
                <th>at chainage</th>
                <th>rail</th>
                <th>underside</th>
                <th>{thread === null ? 'rise' : `turns of ${thread}`}</th>
                <th>riser</th>
                <th>from</th>
                <th>found</th>
              </tr>
            </thead>
            <tbody>
              {track.supports.map((row) => (
                <tr key={row.number}>
                  <td>
                    <span className="tick" />
                  </td>
                  <th>
                    {row.number}
                    {row.rounding && ' ~'}
                  </th>
                  <td>{figureOf(row.chainage, show)}</td>
                  <td>{figureOf(row.rail, show)}</td>
                  <td>
                    <b>{figureOf(row.underside, show)}</b>
                  </td>
                  <td>{riseWords(row, thread, show)}</td>
                  <td>{row.riser === null ? '–' : figureOf(row.riser, show)}</td>
                  <td>{standingWords(row.standing)}</td>
                  <td />
                </tr>
              ))}
            </tbody>
          </table>
          {track.supports.some((row) => row.rounding) && <p>~ within a vertical curve: its tenths are the curve.</p>}
          <h3>Pieces, {show.lengthUnit}</h3>
          <PieceList track={track} index={index} />
        </section>
      ))}
      <SheetDrawing plan={plan} />
    </article>,
    document.body,
  );
}
