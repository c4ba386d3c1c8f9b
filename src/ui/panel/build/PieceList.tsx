import { pieceName } from '../../../core/build/index.ts';
import type { TrackBuild } from '../../../state/build/index.ts';
import { distanceShown, useShow } from '../../show.ts';
import { pieceWords } from './words.ts';

/** The pieces of a strip, element by element; `index` is the track's among those that are built. */
export function PieceList({ track, index }: { readonly track: TrackBuild; readonly index: number }) {
  const show = useShow();
  const kinks = track.pieces.flatMap(({ cuts }) => cuts.filter(({ rounding }) => rounding));
  return (
    <>
      <ul className="rows" aria-labelledby="build-pieces">
        {track.pieces.map((piece) => {
          const { what, blank, how } = pieceWords(piece, show);
          return (
            <li key={piece.element} className="sheet-row">
              <span>
                <b>{pieceName(index, piece.element)}</b> {what}
              </span>
              <span className="figure">{blank}</span>
              <small className="build-how">{how}</small>
            </li>
          );
        })}
      </ul>
      {track.besides.length > 0 && (
        <p className="quiet">
          The strip overlaps another at the same height: one wider deck may carry both. Give the deck its width in the
          scene.
        </p>
      )}
      {kinks.length > 0 && (
        <p className="quiet">
          Butts within a vertical curve, at{' '}
          {kinks.map(({ chainage }) => distanceShown(chainage, show).shown.join('\u2009')).join(', ')}: without a splice
          the grade breaks there.
        </p>
      )}
    </>
  );
}
