/** What is wanted of a number: as great as can be, or as small. */
export type Wish = 'most' | 'least';

/**
 * Indices of the rows that no other row beats: no other is at least as good in every column and better in one (the Pareto
 * front). Rows with a NaN are never on it. Of equal rows all are.
 *
 * @param rows one row a candidate, as many numbers as there are wishes
 */
export function unbeaten(rows: readonly (readonly number[])[], wishes: readonly Wish[]): number[] {
  const signed = rows.map((row) => wishes.map((wish, k) => (wish === 'most' ? row[k] : -row[k])));
  const beats = (a: readonly number[], b: readonly number[]): boolean =>
    a.every((value, k) => value >= b[k]) && a.some((value, k) => value > b[k]);
  return signed.flatMap((row, k) =>
    row.some((value) => Number.isNaN(value)) || signed.some((other) => beats(other, row)) ? [] : [k],
  );
}
