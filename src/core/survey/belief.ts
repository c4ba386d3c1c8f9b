import { type SeededRandom, seededRandom } from '../math/index.ts';
import { whiteSystem } from './estimate.ts';
import type { Account } from './explain.ts';
import { knownHeight } from './knownHeight.ts';
import { factorise, solveFactors } from './leastSquares.ts';
import type { Row, RowSystem } from './rows.ts';
import type { Belief, SurveyInput } from './types.ts';

/** How far off a support shown to be wrong may stand before anything is read, standard deviation, m: much further than any does. */
const wideOpen = 0.1;

/** A support that is the datum, standard deviation, m: nothing beside any reading, and yet a number that can be divided by. */
const datumDeviation = 1e-7;

/**
 * What is believed of the heights as built: the readings (slips put right) together with how closely supports are set. A support
 * shown to be wrong is left to the readings; any other stands within `setting` of where the account has it. Always of full rank.
 */
export function belief(input: SurveyInput, { others }: RowSystem, account: Account): Belief {
  const count = input.supports.length;
  const wrong = new Set(account.explanation.supports.map(({ support }) => support));
  const fixed = new Set(input.fixed);
  const known = input.supports.map((_, support): Row => {
    const deviation = fixed.has(support) ? datumDeviation : wrong.has(support) ? wideOpen : input.setting;
    return knownHeight(count, support, account.explanation.departures[support], deviation);
  });
  const white = whiteSystem([...account.kept, ...known], count, others.length);
  const { values, covariance } = solveFactors(factorise(white));
  const block = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) block[i * count + j] = covariance[i * white.columns + j];
  }
  return { mean: values.slice(0, count), covariance: block };
}

/** Lines as they may stand: `count` draws of all departures, m, decided by the seed alone. */
export function drawLines({ mean, covariance }: Belief, count: number, seed: number): Float64Array[] {
  const lower = cholesky(covariance, mean.length);
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => drawLine(mean, lower, random));
}

function drawLine(mean: Float64Array, lower: Float64Array, random: SeededRandom): Float64Array {
  const n = mean.length;
  const normal = Float64Array.from({ length: n }, () => random.normal());
  return mean.map((value, i) => {
    let sum = value;
    for (let j = 0; j <= i; j++) sum += lower[i * n + j] * normal[j];
    return sum;
  });
}

/** Lower triangle L with L·Lᵀ the covariance; a direction of no variance, or less by rounding, gets none. */
function cholesky(covariance: Float64Array, n: number): Float64Array {
  const lower = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    let pivot = covariance[j * n + j];
    for (let k = 0; k < j; k++) pivot -= lower[j * n + k] * lower[j * n + k];
    if (!(pivot > Number.EPSILON * covariance[j * n + j])) continue;
    const root = Math.sqrt(pivot);
    lower[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let sum = covariance[i * n + j];
      for (let k = 0; k < j; k++) sum -= lower[i * n + k] * lower[j * n + k];
      lower[i * n + j] = sum / root;
    }
  }
  return lower;
}
