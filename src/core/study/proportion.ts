/** A share found in a sample, with the range that the true share lies in with 95 % confidence. */
export interface Proportion {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** Two-sided 95 % point of the normal distribution. */
const z = 1.959963984540054;

/**
 * The share of `hits` among `count` draws with its Wilson score interval (Wilson 1927), which keeps its word for shares near
 * 0 and 1 too: none of twenty still leaves up to 16 %.
 *
 * @throws RangeError unless 0 ≤ hits ≤ count and count ≥ 1, whole numbers
 */
export function proportion(hits: number, count: number): Proportion {
  if (!(Number.isInteger(hits) && Number.isInteger(count) && count >= 1 && hits >= 0 && hits <= count)) {
    throw new RangeError(`${hits} of ${count} is not a share.`);
  }
  const share = hits / count;
  const weight = (z * z) / count;
  const centre = (share + weight / 2) / (1 + weight);
  const half = (z * Math.sqrt((share * (1 - share)) / count + weight / (4 * count))) / (1 + weight);
  return { share, low: hits === 0 ? 0 : centre - half, high: hits === count ? 1 : centre + half };
}
