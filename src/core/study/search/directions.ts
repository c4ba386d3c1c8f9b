import { square } from '../../math/index.ts';

/** Bases of the Halton sequence, one for each number that may be chosen. */
const primes = [2, 3, 5, 7, 11, 13, 17, 19] as const;

/** Most numbers that directions are known for. */
export const mostNumbers = primes.length;

/** Van der Corput's sequence: the digits of a whole number in a base, mirrored at the point. */
function mirrored(number: number, base: number): number {
  let [left, share, sum] = [number, 1 / base, 0];
  while (left > 0) {
    sum += (left % base) * share;
    left = Math.floor(left / base);
    share /= base;
  }
  return sum;
}

/**
 * The round's own right-angled directions, each of length 1: a mirror (Householder) across the `round`-th vector of the Halton sequence, which over
 * all rounds comes as near to every direction as is wished (M. A. Abramson, C. Audet, J. E. Dennis & S. Le Digabel, "OrthoMADS", SIAM J. Optim. 20 (2009) 948).
 */
export function turnedDirections(numbers: number, round: number): number[][] {
  // The first vectors of the sequence keep close to the diagonal in high bases; begun behind the greatest base they do not.
  const vector = Array.from({ length: numbers }, (_, k) => 2 * mirrored(round + primes[numbers - 1], primes[k]) - 1);
  const length = vector.reduce((sum, one) => sum + square(one), 0);
  return Array.from({ length: numbers }, (_, column) =>
    vector.map((one, row) => (row === column ? 1 : 0) - (length > 0 ? (2 * one * vector[column]) / length : 0)),
  );
}
