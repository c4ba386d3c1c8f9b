import type { CutPieces, SheetOfWood } from './cutPieces.ts';

/** Where a piece lies: the sheet, from 0, and the corner of its blank nearest the sheet's, m. */
export interface LaidPiece {
  /** Which of the pieces given. */
  readonly of: number;
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
}

export interface SheetLayout {
  readonly pieces: readonly LaidPiece[];
  readonly sheets: number;
  /** No layout does with fewer: the wood of all pieces over that of a sheet. */
  readonly least: number;
}

/** Pieces side by side across a sheet: a column as long as its longest. */
interface Column {
  readonly sheet: number;
  readonly x: number;
  readonly length: number;
  /** How far across it is filled, m, and with what last. */
  filled: number;
  last: number;
  lastY: number;
}

/**
 * Lays pieces on sheets: the longest first, each into the first column that has room for it, alike ones nested one behind the other.
 * First-fit decreasing height, turned on its side (Coffman, Garey, Johnson and Tarjan, SIAM J. Comput. 9, 1980: at most 1.7 times the least, and one more);
 * a better layout may exist, and `least` says how much better at most. `areas` are those of the pieces themselves, m².
 */
export function layOnSheets(
  pieces: readonly CutPieces[],
  areas: readonly number[],
  { length, width, kerf }: SheetOfWood,
): SheetLayout {
  const order = pieces.map((_, index) => index).sort((a, b) => pieces[b].blank.length - pieces[a].blank.length);
  const columns: Column[] = [];
  /** How far along each sheet is taken. */
  const taken: number[] = [];
  const laid: LaidPiece[] = [];
  for (const of of order) {
    const { blank, pitch, count } = pieces[of];
    for (let i = 0; i < count; i++) {
      const yIn = (column: Column): number => (column.last === of ? column.lastY + pitch : column.filled + kerf);
      let column = columns.find((one) => one.length >= blank.length && yIn(one) + blank.width <= width);
      let y = 0;
      if (column === undefined) {
        let sheet = taken.findIndex((along) => along + kerf + blank.length <= length);
        if (sheet < 0) sheet = taken.push(-kerf) - 1;
        const x = taken[sheet] + kerf;
        taken[sheet] = x + blank.length;
        column = { sheet, x, length: blank.length, filled: 0, last: of, lastY: 0 };
        columns.push(column);
      } else y = yIn(column);
      column.last = of;
      column.lastY = y;
      column.filled = y + blank.width;
      laid.push({ of, sheet: column.sheet, x: column.x, y });
    }
  }
  const wood = pieces.reduce((sum, { count }, index) => sum + count * areas[index], 0);
  return { pieces: laid, sheets: taken.length, least: Math.ceil(wood / (length * width)) };
}
