import { seededRandom } from '../math/index.ts';

/**
 * A Latin hypercube (McKay, Beckman & Conover 1979): `count` points in the unit cube of `sides` dimensions, row by row,
 * every side cut into `count` equal slices of which each holds exactly one point. The seed alone decides.
 *
 * @throws RangeError unless count and sides are whole numbers from 1
 */
export function latinHypercube(count: number, sides: number, seed: number): Float64Array {
  if (!(Number.isInteger(count) && count >= 1 && Number.isInteger(sides) && sides >= 1)) {
    throw new RangeError(`A hypercube has at least one point and one side, not ${count} and ${sides}.`);
  }
  const random = seededRandom(seed);
  const points = new Float64Array(count * sides);
  const slices = Array.from({ length: count }, (_, k) => k);
  for (let side = 0; side < sides; side++) {
    // Fisher-Yates: every order of the slices equally likely.
    for (let k = count - 1; k > 0; k--) {
      const other = random.below(k + 1);
      [slices[k], slices[other]] = [slices[other], slices[k]];
    }
    for (let k = 0; k < count; k++) points[k * sides + side] = (slices[k] + random.uniform()) / count;
  }
  return points;
}
