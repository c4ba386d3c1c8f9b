import type { CutPieces } from '../../../core/build/index.ts';
import type { BuildPlan } from '../../../state/build/index.ts';
import { counted, lengthShown, useShow } from '../../show.ts';
import { outlineOf } from './pieceOutline.ts';

/** Every sheet with what is sawn from it, to scale. */
export function SheetDrawing({ plan }: { readonly plan: BuildPlan }) {
  const show = useShow();
  const { sheet, layout, tracks } = plan;
  const pieces: readonly CutPieces[] = tracks.flatMap((one) => one.pieces);
  const widths = tracks.flatMap((one) => one.pieces.map(() => one.layers.width));
  const words = (metres: number): string => lengthShown(metres, show).shown.join('\u2009');
  /** Easements of an element are all different: each place takes the next. */
  const next = new Map<number, number>();
  return (
    <figure className="build-sheets">
      {Array.from({ length: layout.sheets }, (_, number) => (
        <svg
          // biome-ignore lint/suspicious/noArrayIndexKey: sheets are nothing but their number
          key={number}
          viewBox={`${-sheet.length * 0.01} ${-sheet.length * 0.01} ${sheet.length * 1.02} ${sheet.width + sheet.length * 0.02}`}
          role="img"
          aria-label={`Sheet ${number + 1} of ${layout.sheets}`}
        >
          <rect className="board" width={sheet.length} height={sheet.width} />
          {layout.pieces.map(({ of, sheet: on, x, y }, index) => {
            const which = next.get(of) ?? 0;
            next.set(of, which + 1);
            if (on !== number) return null;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: pieces are laid in this order
              <path key={index} className="piece" d={outlineOf(pieces[of], widths[of], x, y, which)} />
            );
          })}
        </svg>
      ))}
      <figcaption className="quiet">
        {counted(layout.sheets, 'sheet')} of {words(sheet.length)} × {words(sheet.width)}, so laid out; no layout does
        with fewer than {layout.least}.
      </figcaption>
    </figure>
  );
}
