import { log } from '../math/index.ts';
import { chiSquareTail, normalQuantile } from './distributions.ts';
import { knownHeight } from './knownHeight.ts';
import { factorise, solveFactors } from './leastSquares.ts';
import { type Column, type Leftover, leftover, testColumn, type Unknowns } from './residuals.ts';
import type { Row, RowSystem } from './rows.ts';
import { type Candidate, families, type SlipContext } from './slips/index.ts';
import type { Explanation, Reading, Slip, SurveyInput, WrongSupport } from './types.ts';

/** One survey in a hundred of a perfect line, read as stated, may be told that something is wrong. */
export const falseAlarm = 0.01;

/** χ² larger than this seldom comes by chance: then the stated errors are too small. */
const seldom = 0.001;
/** A rival explains as much when χ² falls by less than this in addition: odds below 20 to 1. */
const asMuch = 2 * log(20);

/** After a reading is put right it must fit: not further off than this, in its standard deviations. */
const mustFit = 3.5;

interface Accepted {
  readonly candidate: Candidate;
  readonly statistic: number;
  readonly critical: number;
  /** A reading that would explain as much as a support does. */
  readonly rival: number | null;
}

interface Judged {
  readonly candidate: Candidate;
  /** Fall of χ². */
  readonly statistic: number;
  readonly critical: number;
  /** Fall of χ² less what it costs to have looked for it; the largest explains best. */
  readonly score: number;
}

/** The account with what it rests on: rows with slips put right, readings that fit nothing left out of `kept`. */
export interface Account {
  readonly explanation: Explanation;
  /** Rows as they should have been read, without readings that fit nothing. */
  readonly kept: readonly Row[];
  /** What is left of all rows, and the rows it belongs to. */
  readonly rows: readonly Row[];
  readonly left: Leftover;
  /** How large a fall of χ² a support must bring to be believed. */
  readonly critical: number;
  readonly unknowns: Unknowns;
  /** What was let free, and the support it is about (-1: none). */
  readonly free: readonly { readonly support: number; readonly column: Column }[];
}

/**
 * The simplest account of the readings. Starting from the plan, what explains most is let in (a support off, or a slip), until
 * nothing left is more than chance would bring; a support that later accounts make needless is let go. How closely supports are
 * set is part of chance: each scatters about its place by `setting`, so that only what goes beyond is shown off.
 *
 * What was found is believed when χ² falls by more than the square of the normal quantile for `falseAlarm` shared among all
 * alternatives (Bonferroni), and more than rounding could fake. A slip without a free amount is believed at a likelihood ratio
 * of alternatives/falseAlarm, which by Markov's inequality chance exceeds as seldom. Among several the largest
 * extended Bayes criterion wins (Chen & Chen 2008, γ = 1): each free amount costs the log of the number of readings, each choice among
 * N twice the log of N.
 */
export function explain(input: SurveyInput, system: RowSystem): Account {
  const { shape, others } = system;
  const settings = input.supports.flatMap((_, i) => (input.fixed.includes(i) ? [] : [i]));
  const unknowns: Unknowns = { others: others.length, settings };
  const readings: readonly Reading[] = input.readings;
  let rows: readonly Row[] = [...system.rows, ...settings.map((support) => settingRow(input, support))];
  const accepted: Accepted[] = [];
  const columns = (): Column[] => accepted.flatMap(({ candidate }) => candidate.column ?? []);
  const before = leftover(rows, unknowns, []);
  let left = before;
  let critical = Number.POSITIVE_INFINITY;
  const dropped = new Set<number>();
  // Each round lets in one thing or ends; nothing is let in twice unless it was let go, and then never again.
  for (let round = 0; round < 2 * (readings.length + input.supports.length); round++) {
    const context: SlipContext = { input, shape, others, rows, readings, normalised: normalised(rows, left) };
    const { judged, bonferroni } = judge(context, left, columns(), unknowns);
    critical = bonferroni;
    const free = judged.filter(
      ({ candidate }) =>
        !accepted.some(({ candidate: known }) => same(known, candidate)) &&
        !(candidate.kind === 'support' && dropped.has(candidate.support)),
    );
    const best = pick(free);
    if (best === null) break;
    if (best.candidate.instead !== undefined) {
      const { instead } = best.candidate;
      rows = rows.map((row, index) => instead.get(index) ?? row);
    }
    const { candidate, statistic } = best;
    accepted.push({ candidate, statistic, critical: best.critical, rival: rivalOf(best, judged) });
    left = leftover(rows, unknowns, columns());
    const needless = accepted.findIndex(
      (one) => one.candidate.kind === 'support' && alone(one, accepted, rows, unknowns) < critical,
    );
    if (needless >= 0) {
      dropped.add(accepted[needless].candidate.support);
      accepted.splice(needless, 1);
      left = leftover(rows, unknowns, columns());
    }
  }
  return account(input, system, { rows, accepted, before, left, critical, unknowns });
}

const same = (a: Candidate, b: Candidate): boolean =>
  a.kind === b.kind &&
  a.support === b.support &&
  a.at === b.at &&
  a.readings.length === b.readings.length &&
  a.readings.every((reading, i) => reading === b.readings[i]);

/** Residuals over their own standard deviations; 0 for rows nothing checks. */
function normalised(rows: readonly Row[], { residual, basis }: Leftover): Float64Array {
  return residual.map((value, i) => {
    const redundancy = 1 - basis.reduce((sum, one) => sum + one[i] * one[i], 0);
    return redundancy > 1e-9 && rows[i].reading >= 0 ? value / Math.sqrt(redundancy) : 0;
  });
}

/** Every candidate that could be believed, with its score. */
function judge(
  context: SlipContext,
  left: Leftover,
  columns: readonly Column[],
  unknowns: Unknowns,
): { judged: Judged[]; bonferroni: number } {
  const all = families.map((family) => family(context, left));
  const alternatives = all.reduce((sum, one) => sum + one.alternatives, 0);
  const quantile = normalQuantile(falseAlarm / alternatives / 2);
  const bonferroni = quantile * quantile;
  const markov = 2 * log(alternatives / falseAlarm);
  const count = context.readings.length;
  const judged: Judged[] = [];
  for (const family of all) {
    const looked = 2 * log(family.alternatives);
    for (const candidate of family.candidates) {
      const { column, instead } = candidate;
      if (column !== undefined) {
        const test = testColumn(context.rows, left, column(context.rows));
        if (test === null || !test.beyondRounding || test.statistic <= bonferroni) continue;
        if (Math.abs(test.amount) > (candidate.largest ?? Number.POSITIVE_INFINITY)) continue;
        const { statistic } = test;
        judged.push({ candidate, statistic, critical: bonferroni, score: statistic - log(count) - looked });
      } else if (instead !== undefined) {
        const fall = fallWith(context, instead, left, columns, unknowns);
        if (fall <= markov) continue;
        judged.push({ candidate, statistic: fall, critical: markov, score: fall - looked });
      }
    }
  }
  return { judged, bonferroni };
}

/** Twice the log of the likelihood gained when some rows are taken otherwise; 0 when one of them then does not fit. */
function fallWith(
  { rows }: SlipContext,
  instead: ReadonlyMap<number, Row>,
  left: Leftover,
  columns: readonly Column[],
  unknowns: Unknowns,
): number {
  const changed = rows.map((row, index) => instead.get(index) ?? row);
  const after = leftover(changed, unknowns, columns);
  if (instead.size === 1) {
    const fit = normalised(changed, after);
    for (const index of instead.keys()) if (Math.abs(fit[index]) > mustFit) return 0;
  }
  let widths = 0;
  for (const [index, row] of instead) widths += log(rows[index].deviation / row.deviation);
  return left.chiSquare - after.chiSquare + 2 * widths;
}

/** The best of what is believed; a reading misread goes before a whole line raised when both explain the same. */
function pick(judged: readonly Judged[]): Judged | null {
  const best = judged.reduce<Judged | null>((top, one) => (top === null || one.score > top.score ? one : top), null);
  if (best === null || best.candidate.kind !== 'raised-from') return best;
  const reading = judged
    .filter(({ candidate }) => candidate.readings.length === 1 && candidate.at === 'readings')
    .reduce<Judged | null>((top, one) => (top === null || one.score > top.score ? one : top), null);
  return reading !== null && reading.statistic > best.statistic - asMuch ? reading : best;
}

function rivalOf(best: Judged, judged: readonly Judged[]): number | null {
  if (best.candidate.kind !== 'support') return null;
  const rival = judged
    .filter(({ candidate }) => candidate.kind === 'outlier')
    .reduce<Judged | null>((top, one) => (top === null || one.statistic > top.statistic ? one : top), null);
  return rival !== null && rival.statistic > best.statistic - asMuch ? rival.candidate.readings[0] : null;
}

/** The statistic of one accepted candidate with all the others let free. */
function alone(one: Accepted, accepted: readonly Accepted[], rows: readonly Row[], unknowns: Unknowns): number {
  const rest = accepted.flatMap((other) => (other === one ? [] : (other.candidate.column ?? [])));
  const column = one.candidate.column?.(rows);
  return column === undefined ? 0 : (testColumn(rows, leftover(rows, unknowns, rest), column)?.statistic ?? 0);
}

interface Found {
  readonly rows: readonly Row[];
  readonly accepted: readonly Accepted[];
  readonly before: Leftover;
  readonly left: Leftover;
  readonly critical: number;
  readonly unknowns: Unknowns;
}

function account(input: SurveyInput, { others }: RowSystem, found: Found): Account {
  const { rows, accepted, before, left, critical, unknowns } = found;
  const { settings } = unknowns;
  const free = accepted.filter(({ candidate }) => candidate.column !== undefined);
  const columns = free.map(({ candidate }) => candidate.column!(rows));
  const { values, covariance } = solveAccount(rows, unknowns, columns);
  const first = others.length + settings.length;
  const width = first + free.length;
  const shared = (a: number, b: number): number => covariance[a * width + b];
  const deviationOf = (unknown: number): number => Math.sqrt(shared(unknown, unknown));
  const departures = new Float64Array(input.supports.length);
  const supports: WrongSupport[] = [];
  const slips: Slip[] = [];
  for (const { candidate, statistic, critical: needed, rival } of accepted) {
    const at = free.findIndex((one) => one.candidate === candidate);
    const amount = at < 0 ? (candidate.amount ?? 0) : values[first + at];
    const deviation = at < 0 ? 0 : deviationOf(first + at);
    candidate.pattern?.forEach((share, i) => {
      departures[i] += share * amount;
    });
    const { kind, support, readings } = candidate;
    if (kind === 'support') {
      // Where it stands is what it is off by and what it scatters by together; only the sum is known well.
      const own = others.length + settings.indexOf(support);
      const sum = shared(first + at, first + at) + 2 * shared(first + at, own) + shared(own, own);
      supports.push({ support, departure: amount, deviation: Math.sqrt(sum), statistic: amount / deviation, rival });
    } else slips.push({ kind, readings, amount, deviation, statistic, critical: needed, support, at: candidate.at });
  }
  supports.sort((a, b) => a.support - b.support);
  const degreesOfFreedom = rows.length - left.rank;
  const probability = chiSquareTail(left.chiSquare, degreesOfFreedom);
  const explanation: Explanation = {
    supports,
    slips,
    before: { chiSquare: before.chiSquare, degreesOfFreedom: rows.length - before.rank },
    after: { chiSquare: left.chiSquare, degreesOfFreedom, probability },
    instruments: others.map(({ id }, i) => ({ id, value: values[i], deviation: deviationOf(i) })),
    noiseExplains: departures.every((departure) => departure === 0),
    disagree: probability < seldom,
    departures,
  };
  const kept = keptRows(rows, free, columns, values.subarray(first));
  const letFree = free.map(({ candidate: { kind, support, column } }) => ({
    support: kind === 'support' ? support : -1,
    column: column!,
  }));
  return { explanation, kept, rows, left, critical, unknowns, free: letFree };
}

/** How closely a support is set when nothing goes wrong, as a row. */
function settingRow({ supports, setting }: SurveyInput, support: number): Row {
  return { ...knownHeight(supports.length, support, 0, setting), reading: ofSetting };
}

/** Marks the rows of settings: they belong to the account and not to the readings. */
const ofSetting = -2;

function solveAccount(rows: readonly Row[], { others, settings }: Unknowns, columns: readonly Float64Array[]) {
  const first = others + settings.length;
  const width = first + columns.length;
  const matrix = new Float64Array(rows.length * width);
  const right = new Float64Array(rows.length);
  rows.forEach((row, i) => {
    for (const [unknown, factor] of row.others) matrix[i * width + unknown] += factor / row.deviation;
    settings.forEach((support, j) => {
      matrix[i * width + others + j] = row.heights[support] / row.deviation;
    });
    columns.forEach((column, j) => {
      matrix[i * width + first + j] = column[i] / row.deviation;
    });
    right[i] = (row.observed - row.planned) / row.deviation;
  });
  return solveFactors(factorise({ rows: rows.length, columns: width, matrix, right }));
}

/** The readings' own rows with what slips added taken off, and without readings that fit nothing. */
function keptRows(
  rows: readonly Row[],
  free: readonly Accepted[],
  columns: readonly Float64Array[],
  amounts: Float64Array,
): Row[] {
  const gone = new Set(free.flatMap(({ candidate }) => (candidate.kind === 'outlier' ? candidate.readings : [])));
  return rows.flatMap((row, i) => {
    if (gone.has(row.reading) || row.reading === ofSetting) return [];
    let { observed } = row;
    free.forEach(({ candidate }, j) => {
      if (candidate.pattern === undefined) observed -= columns[j][i] * amounts[j];
    });
    return [{ ...row, observed }];
  });
}
