import type { BucketIndex } from './types.ts';

/** More cells than this for every piece buy nothing: pieces that much shorter than the average share a cell. */
const MOST_CELLS_PER_PIECE = 32;

/** An index over pieces that start at the rising `starts` and together reach from `starts[0]` to `end`. */
export function makeBucketIndex(starts: Float64Array, end: number): BucketIndex {
  const n = starts.length;
  const span = end - starts[0];
  let shortest = span;
  for (let k = 0; k < n; k++) shortest = Math.min(shortest, (k + 1 < n ? starts[k + 1] : end) - starts[k]);
  const cells = Math.max(1, Math.ceil(Math.min(span / shortest, MOST_CELLS_PER_PIECE * n)));
  const first = new Int32Array(cells);
  let k = 0;
  for (let i = 0; i < cells; i++) {
    const from = starts[0] + (i * span) / cells;
    while (k + 1 < n && starts[k + 1] <= from) k++;
    first[i] = k;
  }
  return { cell: span / cells, first };
}

/** The piece that holds `at`: the last one that starts at or before it. Values outside get the first or last piece. */
export function locate(index: BucketIndex, starts: Float64Array, at: number): number {
  const { first } = index;
  let i = ((at - starts[0]) / index.cell) | 0;
  if (i < 0) i = 0;
  else if (i >= first.length) i = first.length - 1;
  let k = first[i];
  // Rounding of the cell number can land one cell late.
  while (k > 0 && starts[k] > at) k--;
  const last = starts.length - 1;
  while (k < last && starts[k + 1] <= at) k++;
  return k;
}
