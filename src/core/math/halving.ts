/**
 * The least whole number of `from`..`to` - 1 for which `holds`, `to` where there is none. Once it holds, it has to hold for greater ones as well; asked
 * about as many numbers as the range can be halved.
 */
export function firstThat(from: number, to: number, holds: (number: number) => boolean): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Index of the first of some rising numbers that is not below `least`; how many there are where all are. */
export const firstNotBelow = (rising: ArrayLike<number>, least: number): number =>
  firstThat(0, rising.length, (k) => !(rising[k] < least));

/** Index of the last of some rising numbers that is not above `most`; -1 where all are. */
export const lastNotAbove = (rising: ArrayLike<number>, most: number): number =>
  firstThat(0, rising.length, (k) => !(rising[k] <= most)) - 1;
