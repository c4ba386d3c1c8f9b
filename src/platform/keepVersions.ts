/** Versions of one railway that are kept at most. */
export const mostVersions = 20;

/**
 * Which of these moments (ms, newest first) to drop so that at most `most` are left: always the one whose neighbours lie closest for its
 * age, so that what is left is close together lately and further apart the longer ago. The newest and the oldest stay.
 */
export function thinnedOut(moments: readonly number[], most: number = mostVersions): readonly number[] {
  const left = [...moments];
  const dropped: number[] = [];
  const newest = moments[0] ?? 0;
  while (left.length > most && left.length > 2) {
    let best = 1;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 1; k + 1 < left.length; k++) {
      // A millisecond, so that two of one moment can be compared.
      const tight = (left[k - 1] - left[k + 1] + 1) / (newest - left[k] + 1);
      if (tight < least) {
        least = tight;
        best = k;
      }
    }
    dropped.push(...left.splice(best, 1));
  }
  return dropped;
}
