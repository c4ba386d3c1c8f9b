import type { CutPieces } from './cutPieces.ts';
import { type OnSheet, type Outline, pieceOutline } from './pieceOutline.ts';
import type { SheetLayout } from './sheetLayout.ts';

/** A piece where it is sawn: which it is, its outline on its sheet, and a place well inside it for its name. */
export interface LaidOutline {
  /** Which of the pieces laid out, and which of those alike, both from 0. */
  readonly of: number;
  readonly which: number;
  readonly sheet: number;
  readonly outline: Outline;
  readonly middle: OnSheet;
}

/** Every piece of a layout with its outline; `widths` are those of the strips that the pieces belong to, m. */
export function laidOutlines(
  pieces: readonly CutPieces[],
  widths: readonly number[],
  layout: SheetLayout,
): LaidOutline[] {
  const met = new Map<number, number>();
  return layout.pieces.map(({ of, sheet, x, y }) => {
    const which = met.get(of) ?? 0;
    met.set(of, which + 1);
    const { blank } = pieces[of];
    const outline = pieceOutline(pieces[of], widths[of], x, y, which);
    // A sector is highest in the middle of its length, and half a strip below that is wood.
    const across = pieces[of].shape === 'sector' ? widths[of] / 2 : blank.width / 2;
    return { of, which, sheet, outline, middle: [x + blank.length / 2, y + across] };
  });
}
