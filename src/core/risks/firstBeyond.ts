/** Index of the first of some rising numbers that is not below `least`. */
export function firstBeyond(rising: Float64Array, least: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle] < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
