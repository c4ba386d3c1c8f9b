import { lastNotAbove } from '../../math/index.ts';
import type { HeightPieces } from '../types.ts';

/** Piece starts nearer than this are one: a thousandth of a nanometre, above the rounding of chainages of 100 m. */
export const CHAINAGE_ROUNDING = 1e-12;

/** Builds pieces one after another. Piece 0 also holds for everything before its start, so it must be straight there. */
export class PieceWriter {
  private readonly rows: number[][] = [];

  add(start: number, a: number, b: number, c = 0, d = 0, e = 0): void {
    this.rows.push([start, a, b, c, d, e]);
  }

  get isEmpty(): boolean {
    return this.rows.length === 0;
  }

  /** Takes the last piece back. */
  dropLast(): void {
    this.rows.pop();
  }

  pieces(): HeightPieces {
    const column = (i: number): Float64Array => Float64Array.from(this.rows, (row) => row[i]);
    return { startChainage: column(0), a: column(1), b: column(2), c: column(3), d: column(4), e: column(5) };
  }
}

/** The piece of `pieces` that holds `chainage`, by halving; for preparation, not for hot loops. */
export function pieceAt(pieces: HeightPieces, chainage: number): number {
  return Math.max(0, lastNotAbove(pieces.startChainage, chainage));
}

/** The height of pieces at `chainage`, m. */
export function pieceHeight(pieces: HeightPieces, chainage: number): number {
  const k = pieceAt(pieces, chainage);
  const t = chainage - pieces.startChainage[k];
  const { a, b, c, d, e } = pieces;
  return a[k] + t * (b[k] + t * (c[k] + t * (d[k] + t * e[k])));
}

/** The sum of several sets of pieces over [0, length], cut wherever any of them is, and at `cuts`. */
export function sumPieces(parts: readonly HeightPieces[], length: number, cuts: readonly number[] = []): HeightPieces {
  const starts = [0];
  const places = [...parts.flatMap((part) => [...part.startChainage]), ...cuts];
  const inside = places.filter((s) => s > 0 && s < length);
  for (const s of inside.sort((p, q) => p - q)) {
    if (s - starts[starts.length - 1] > CHAINAGE_ROUNDING && length - s > CHAINAGE_ROUNDING) starts.push(s);
  }
  const sum = new PieceWriter();
  starts.forEach((start, i) => {
    const end = i + 1 < starts.length ? starts[i + 1] : length;
    const total = [0, 0, 0, 0, 0];
    for (const part of parts) {
      // Asked in the middle, so that starts which differ by rounding alone pick the same piece.
      const k = pieceAt(part, (start + end) / 2);
      const t = start - part.startChainage[k];
      const { a, b, c, d, e } = part;
      total[0] += a[k] + t * (b[k] + t * (c[k] + t * (d[k] + t * e[k])));
      total[1] += b[k] + t * (2 * c[k] + t * (3 * d[k] + t * 4 * e[k]));
      total[2] += c[k] + t * (3 * d[k] + t * 6 * e[k]);
      total[3] += d[k] + t * 4 * e[k];
      total[4] += e[k];
    }
    sum.add(start, total[0], total[1], total[2], total[3], total[4]);
  });
  return sum.pieces();
}

/** `base` with the stretches `from` to `to`, m, of `over` in its place. Both are cut where they change hands. */
export function overlaidPieces(base: HeightPieces, over: HeightPieces, from: number, to: number): HeightPieces {
  const result = new PieceWriter();
  const copy = (pieces: HeightPieces, low: number, high: number): void => {
    const { startChainage, a, b, c, d, e } = pieces;
    for (let k = 0; k < startChainage.length; k++) {
      // Piece 0 also holds for everything before its start.
      const start = k === 0 ? low : Math.max(startChainage[k], low);
      const end = k + 1 < startChainage.length ? Math.min(startChainage[k + 1], high) : high;
      if (end - start <= CHAINAGE_ROUNDING) continue;
      const t = start - startChainage[k];
      result.add(
        start,
        a[k] + t * (b[k] + t * (c[k] + t * (d[k] + t * e[k]))),
        b[k] + t * (2 * c[k] + t * (3 * d[k] + t * 4 * e[k])),
        c[k] + t * (3 * d[k] + t * 6 * e[k]),
        d[k] + t * 4 * e[k],
        e[k],
      );
    }
  };
  copy(base, Math.min(0, from), from);
  copy(over, from, to);
  copy(base, to, Number.POSITIVE_INFINITY);
  return result.pieces();
}

/** Pieces up to chainage `end`, m, of a track of `length` counted from its other end. */
export function mirroredPieces(pieces: HeightPieces, length: number, end: number): HeightPieces {
  const mirrored = new PieceWriter();
  const { startChainage, a, b, c, d, e } = pieces;
  for (let k = startChainage.length - 1; k >= 0; k--) {
    if (startChainage[k] >= end) continue;
    const to = Math.min(k + 1 < startChainage.length ? startChainage[k + 1] : end, end);
    const t = to - startChainage[k];
    mirrored.add(
      length - to,
      a[k] + t * (b[k] + t * (c[k] + t * (d[k] + t * e[k]))),
      0 - (b[k] + t * (2 * c[k] + t * (3 * d[k] + t * 4 * e[k]))),
      c[k] + t * (3 * d[k] + t * 6 * e[k]),
      0 - (d[k] + t * 4 * e[k]),
      e[k],
    );
  }
  return mirrored.pieces();
}
