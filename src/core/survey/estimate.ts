import { deficiencies, heldSupports } from './datum.ts';
import { chiSquareTail, normalQuantile } from './distributions.ts';
import type { Account } from './explain.ts';
import { factorise, nullDirections, solveFactors } from './leastSquares.ts';
import { lineAt } from './lineShape.ts';
import { leftover, roundingBound, testColumn } from './residuals.ts';
import type { Row, RowSystem } from './rows.ts';
import { patternColumn } from './slips/candidate.ts';
import type { Estimate, ReadingFit, SupportEstimate, SurveyInput } from './types.ts';

/** Standard deviation beyond which a support counts as not seen, m: the eye would tell more. */
const tellsNothing = 0.05;

/** A departure counts as detectable when it would be found this often. */
const power = 0.8;

/** Rows as a matrix over heights and other unknowns, each divided by its standard deviation. */
export function whiteSystem(rows: readonly Row[], supports: number, others: number) {
  const columns = supports + others;
  const matrix = new Float64Array(rows.length * columns);
  const right = new Float64Array(rows.length);
  rows.forEach((row, i) => {
    for (let j = 0; j < supports; j++) matrix[i * columns + j] = row.heights[j] / row.deviation;
    for (const [unknown, factor] of row.others) matrix[i * columns + supports + unknown] += factor / row.deviation;
    right[i] = (row.observed - row.planned) / row.deviation;
  });
  return { rows: rows.length, columns, matrix, right };
}

type White = ReturnType<typeof whiteSystem>;

/** The system with some columns left out: those unknowns are held at 0. */
function withoutColumns({ rows, columns, matrix, right }: White, held: ReadonlySet<number>) {
  const free = Array.from({ length: columns }, (_, j) => j).filter((j) => !held.has(j));
  const smaller = new Float64Array(rows * free.length);
  for (let i = 0; i < rows; i++) {
    for (const [k, j] of free.entries()) smaller[i * free.length + k] = matrix[i * columns + j];
  }
  return { free, system: { rows, columns: free.length, matrix: smaller, right } };
}

/**
 * Heights of all supports by weighted least squares from the readings alone (slips put right), with their covariance. What the
 * readings cannot tell is named, and as few supports as needed are held at their planned height to tell the rest.
 */
export function estimate(input: SurveyInput, { shape, others }: RowSystem, account: Account): Estimate {
  const count = input.supports.length;
  const white = whiteSystem(account.kept, count, others.length);
  const fixed = withoutColumns(white, new Set(input.fixed));
  const loose = nullDirections(factorise(fixed.system)).map((direction) => {
    const whole = new Float64Array(white.columns);
    fixed.free.forEach((j, k) => {
      whole[j] = direction[k];
    });
    return whole;
  });
  const held = heldSupports(loose, count, white.columns);
  const heldAll = new Set([...input.fixed, ...held]);
  const { free, system } = withoutColumns(white, heldAll);
  const factors = factorise(system);
  const solved = solveFactors(factors);
  const values = new Float64Array(white.columns);
  const covariance = new Float64Array(count * count);
  const fitted = new Float64Array(white.columns);
  free.forEach((j, k) => {
    values[j] = fitted[j] = solved.values[k];
    if (j >= count) return;
    free.forEach((other, l) => {
      if (other < count) covariance[j * count + other] = solved.covariance[k * free.length + l];
    });
  });
  let named = deficiencies(loose, held, account.kept, input, count);
  const unseen = new Set(named.flatMap((one) => (one.kind === 'unseen' ? one.supports : [])));
  const detectable = detectables(input, account);
  const deviations = input.supports.map((_, support) => Math.sqrt(covariance[support * count + support]));
  const vague = deviations.flatMap((deviation, support) => (deviation > tellsNothing ? [support] : []));
  if (vague.some((support) => !unseen.has(support))) {
    const supports = [...new Set([...unseen, ...vague])].sort((a, b) => a - b);
    named = [{ kind: 'unseen', supports }, ...named.filter(({ kind }) => kind !== 'unseen')];
    for (const support of vague) {
      unseen.add(support);
      values[support] = 0;
    }
  }
  for (const i of unseen) for (let j = 0; j < count; j++) covariance[i * count + j] = covariance[j * count + i] = 0;
  const supports = input.supports.map((chainage, support): SupportEstimate => {
    const smallest = detectable[support];
    return {
      support,
      chainage,
      planned: lineAt(shape, chainage, 0).planned,
      departure: values[support],
      deviation: unseen.has(support) ? Number.POSITIVE_INFINITY : deviations[support],
      detectable: smallest,
      detectableKink: kinkOf(input.supports, support, smallest),
    };
  });
  const degreesOfFreedom = account.kept.length - factors.rank;
  return {
    supports,
    covariance,
    deficiencies: named,
    fits: fitsOf(account.kept, white, fitted, free, solved.covariance),
    chiSquare: factors.remainder,
    degreesOfFreedom,
    probability: chiSquareTail(factors.remainder, degreesOfFreedom),
  };
}

/** Change of grade between the chords before and after a support that stands off by `departure`. */
function kinkOf(supports: readonly number[], i: number, departure: number): number {
  if (i === 0 || i + 1 === supports.length) return 0;
  return departure * (1 / (supports[i] - supports[i - 1]) + 1 / (supports[i + 1] - supports[i]));
}

/** Smallest departure of each support alone that would be believed with probability `power` (Baarda's minimal detectable bias). */
function detectables(input: SurveyInput, { rows, left, critical, free, unknowns }: Account): number[] {
  const needed = Math.sqrt(critical) + normalQuantile(1 - power);
  const fixed = new Set(input.fixed);
  return input.supports.map((_, support) => {
    if (fixed.has(support)) return 0;
    const pattern = new Float64Array(input.supports.length);
    pattern[support] = 1;
    const column = patternColumn(pattern)(rows);
    // A support already let free is looked at as if it were not yet.
    const rest = free.filter((one) => one.support !== support);
    const seen =
      rest.length === free.length
        ? left
        : leftover(
            rows,
            unknowns,
            rest.map((one) => one.column),
          );
    const test = testColumn(rows, seen, column);
    if (test === null) return Number.POSITIVE_INFINITY;
    return Math.max(needed * test.deviation, roundingBound(rows, seen, column));
  });
}

function fitsOf(
  rows: readonly Row[],
  white: White,
  values: Float64Array,
  free: readonly number[],
  covariance: Float64Array,
): ReadingFit[] {
  return rows.flatMap((row, i) => {
    if (row.reading < 0) return [];
    const a = free.map((j) => white.matrix[i * white.columns + j]);
    let fitted = 0;
    for (let j = 0; j < white.columns; j++) fitted += white.matrix[i * white.columns + j] * values[j];
    let leverage = 0;
    for (let p = 0; p < free.length; p++) {
      if (a[p] === 0) continue;
      for (let q = 0; q < free.length; q++) leverage += a[p] * covariance[p * free.length + q] * a[q];
    }
    const redundancy = Math.max(0, 1 - leverage);
    const residual = white.right[i] - fitted;
    const normalised = redundancy > checks ? residual / Math.sqrt(redundancy) : 0;
    return [
      { reading: row.reading, deviation: row.deviation, residual: residual * row.deviation, normalised, redundancy },
    ];
  });
}

/** A reading whose error shows by less than this share is checked by nothing: rounding. */
const checks = 1e-6;
