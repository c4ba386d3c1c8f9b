import { firstThat } from '../../math/index.ts';

/**
 * The least whole number of `from`..`to` that passes, by bisection; null when `to` does not. Once passed, greater numbers have to
 * pass as well: more vehicles off, more weight on, more of the setting.
 */
export function leastPassing(from: number, to: number, passes: (number: number) => boolean): number | null {
  if (to < from || !passes(to)) return null;
  return firstThat(from, to, passes);
}

/**
 * The greatest whole number of 0..`most` that passes when smaller ones do too; null when 0 fails. It is looked for from `guess` in growing
 * strides, since passes grow dearer with the number.
 */
export function greatestPassing(guess: number, most: number, passes: (number: number) => boolean): number | null {
  let good = -1;
  let bad = most + 1;
  if (guess >= 0 && guess <= most) {
    if (passes(guess)) good = guess;
    else bad = guess;
  }
  for (let stride = 1; bad > most && good >= 0 && good < most; stride *= 2) {
    const next = Math.min(most, good + stride);
    if (passes(next)) good = next;
    else bad = next;
  }
  const greatest = firstThat(good + 1, bad, (number) => !passes(number)) - 1;
  return greatest < 0 ? null : greatest;
}
