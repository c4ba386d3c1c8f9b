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

/** A rectangle of wood that is still whole, m. */
interface Room {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** Rounding of summed lengths, m. */
const rounding = 1e-9;

/**
 * Lays pieces on sheets, the longest first: as many alike as will go into one room nest there one behind the other, in the room that they fill best across; the rooms that are left are all the
 * greatest rectangles of whole wood (the method is known as maximal rectangles; from memory). A better layout may exist: `least` says how much better at most.
 * `areas` are those of the pieces themselves, m². No blank may be larger than the sheet.
 */
export function layOnSheets(
  pieces: readonly CutPieces[],
  areas: readonly number[],
  { length, width, kerf }: SheetOfWood,
): SheetLayout {
  const order = pieces.map((_, index) => index).sort((a, b) => pieces[b].blank.length - pieces[a].blank.length);
  const sheets: Room[][] = [];
  const laid: LaidPiece[] = [];
  for (const of of order) {
    const { blank, pitch, count } = pieces[of];
    for (let left = count; left > 0; ) {
      const found = bestRoom(sheets, blank, pitch, left);
      if (found === null) {
        sheets.push([{ x: 0, y: 0, length, width }]);
        continue;
      }
      const { sheet, room, many } = found;
      for (let i = 0; i < many; i++) laid.push({ of, sheet, x: room.x, y: room.y + i * pitch });
      const across = blank.width + (many - 1) * pitch;
      sheets[sheet] = without(sheets[sheet], {
        x: room.x - kerf,
        y: room.y - kerf,
        length: blank.length + 2 * kerf,
        width: across + 2 * kerf,
      });
      left -= many;
    }
  }
  const wood = pieces.reduce((sum, { count }, index) => sum + count * areas[index], 0);
  return { pieces: laid, sheets: sheets.length, least: Math.ceil(wood / (length * width) - rounding) };
}

/** The room that takes most of `left` pieces nested; of several, the one with least to spare across. Null where not one fits anywhere. */
function bestRoom(
  sheets: readonly (readonly Room[])[],
  blank: CutPieces['blank'],
  pitch: number,
  left: number,
): { sheet: number; room: Room; many: number } | null {
  let best: { sheet: number; room: Room; many: number; spare: number } | null = null;
  for (const [sheet, rooms] of sheets.entries()) {
    for (const room of rooms) {
      if (blank.length > room.length + rounding || blank.width > room.width + rounding) continue;
      const many = Math.min(left, 1 + Math.floor((room.width - blank.width + rounding) / pitch));
      const spare = Math.min(room.width - blank.width - (many - 1) * pitch, room.length - blank.length);
      if (best === null || many > best.many || (many === best.many && spare < best.spare)) {
        best = { sheet, room, many, spare };
      }
    }
  }
  return best;
}

/** The greatest rectangles that are left of rooms when a piece is taken out of them. */
function without(rooms: readonly Room[], taken: Room): Room[] {
  const parts = rooms.flatMap((room): Room[] => {
    const [right, top] = [taken.x + taken.length, taken.y + taken.width];
    const [end, upper] = [room.x + room.length, room.y + room.width];
    if (taken.x >= end || right <= room.x || taken.y >= upper || top <= room.y) return [room];
    return [
      { ...room, length: taken.x - room.x },
      { ...room, x: right, length: end - right },
      { ...room, width: taken.y - room.y },
      { ...room, y: top, width: upper - top },
    ].filter((part) => part.length > rounding && part.width > rounding);
  });
  return parts.filter(
    (part, i) => !parts.some((other, j) => j !== i && holds(other, part) && (j < i || !holds(part, other))),
  );
}

const holds = (room: Room, part: Room): boolean =>
  part.x >= room.x - rounding &&
  part.y >= room.y - rounding &&
  part.x + part.length <= room.x + room.length + rounding &&
  part.y + part.width <= room.y + room.width + rounding;
