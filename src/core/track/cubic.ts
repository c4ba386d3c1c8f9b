import type { CubicPieces } from './types.ts';

/** Piece starts nearer than this are one: a thousandth of a nanometre, above the rounding of chainages of 100 m. */
export const CHAINAGE_ROUNDING = 1e-12;

/** Builds cubic pieces one after another. Piece 0 also holds for everything before its start, so it must be straight there. */
export class CubicWriter {
  private readonly rows: number[][] = [];

  add(start: number, a: number, b: number, c = 0, d = 0): void {
    this.rows.push([start, a, b, c, d]);
  }

  get isEmpty(): boolean {
    return this.rows.length === 0;
  }

  /** Takes the last piece back. */
  dropLast(): void {
    this.rows.pop();
  }

  pieces(): CubicPieces {
    const column = (i: number): Float64Array => Float64Array.from(this.rows, (row) => row[i]);
    return { startChainage: column(0), a: column(1), b: column(2), c: column(3), d: column(4) };
  }
}

/** The piece of `pieces` that holds `chainage`, by halving; for preparation, not for hot loops. */
function pieceAt(pieces: CubicPieces, chainage: number): number {
  const { startChainage } = pieces;
  let low = 0;
  let high = startChainage.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (startChainage[middle] <= chainage) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The sum of several sets of pieces over [0, length], cut wherever any of them is. */
export function sumPieces(parts: readonly CubicPieces[], length: number): CubicPieces {
  const starts = [0];
  const inside = parts.flatMap((part) => [...part.startChainage]).filter((s) => s > 0 && s < length);
  for (const s of inside.sort((p, q) => p - q)) {
    if (s - starts[starts.length - 1] > CHAINAGE_ROUNDING && length - s > CHAINAGE_ROUNDING) starts.push(s);
  }
  const sum = new CubicWriter();
  starts.forEach((start, i) => {
    const end = i + 1 < starts.length ? starts[i + 1] : length;
    const total = [0, 0, 0, 0];
    for (const part of parts) {
      // Asked in the middle, so that starts which differ by rounding alone pick the same piece.
      const k = pieceAt(part, (start + end) / 2);
      const t = start - part.startChainage[k];
      const { a, b, c, d } = part;
      total[0] += a[k] + t * (b[k] + t * (c[k] + t * d[k]));
      total[1] += b[k] + t * (2 * c[k] + t * 3 * d[k]);
      total[2] += c[k] + t * 3 * d[k];
      total[3] += d[k];
    }
    sum.add(start, total[0], total[1], total[2], total[3]);
  });
  return sum.pieces();
}
