import { type LimitRow, limitTolerance } from './limitRows.ts';
import type { LineShape } from './lineShape.ts';
import type { Adjuster, Belief, Limits, MendProblem, MendRow, MendTask, MendVariable } from './types.ts';

/** Grades go into the problem in per cent, lengths in mm, bend in 1/100 m: numbers of one size solve best. */
export const problemUnit: Readonly<Record<keyof Limits, number>> = {
  greatestGrade: 100,
  leastGrade: 100,
  greatestKink: 100,
  leastRadius: 100,
  headroom: 1e3,
  largestRise: 1e3,
  largestDrop: 1e3,
};

const mm = 1e3;

/** Largest change where the task sets none, m: more is building anew. It also bounds the switches of the integer problem. */
export const largestChange = 0.025;

/** When limits are relaxed to see what they would have to become, a change may be this large, m. */
const relaxedChange = 0.25;

type Terms = (readonly [variable: number, coefficient: number])[];

/** What the problem is about beside its limits. */
export interface MendSubject {
  readonly shape: LineShape;
  readonly task: MendTask;
  /** Departures as estimated, m. */
  readonly departures: ArrayLike<number>;
  /** Supports that may be touched. */
  readonly touchable: readonly number[];
  /** False: touched supports need not come near the plan (right ones are set to suit wrong ones); true when left out. */
  readonly toPlan?: boolean;
  /** True: no switches, changes almost without bound, and one slack for each kind of limit named. */
  readonly relaxed?: readonly (keyof Limits)[];
  /** Room kept to each limit, in its own unit, one a row; none when left out. */
  readonly margins?: ArrayLike<number>;
  /** For the flattest line: places whose grade must stay under the least greatest grade, and its sense. */
  readonly ceiling?: readonly LimitRow[];
}

/** Builds up variables by name. */
class Variables {
  readonly all: MendVariable[] = [];

  add(name: string, least: number, most: number, whole = false): number {
    this.all.push({ name, least, most, whole });
    return this.all.length - 1;
  }
}

/**
 * The task as a mixed-integer linear problem. For each support that may be touched: a change up and one down (nuts) or numbers
 * of pieces (packing), and a switch that is 1 when it is touched. The switch times the largest change bounds the change; that
 * number is the person's own limit, so it cuts nothing off that would be allowed.
 *
 * Objectives in turn: fewest: switches, then what the touched supports still depart from plan (nuts: turning one further
 * costs nothing) or the packing put in; least: sum of changes, then switches; flattest: the greatest grade in the direction of the
 * climb, then the sum of changes.
 */
export function mendProblem(subject: MendSubject, rows: readonly LimitRow[]): MendProblem {
  const { shape, task, departures, touchable, relaxed } = subject;
  const { adjuster, limits } = task;
  const variables = new Variables();
  const ties: Omit<MendRow, 'place'>[] = [];
  const own: MendRow[] = [];
  const change: Terms[] = shape.supports.map(() => []);
  const work: Terms = [];
  const switches: Terms = [];
  const remains: Terms = [];
  const room = (limit: 'largestRise' | 'largestDrop'): number =>
    (relaxed === undefined ? (limits[limit] ?? largestChange) : relaxedChange) * mm;
  for (const support of touchable) {
    const put = adjusterVariables(adjuster, support, variables, {
      rise: room('largestRise'),
      drop: room('largestDrop'),
    });
    change[support].push(...put.change);
    work.push(...put.work);
    const place = { chainage: shape.supports[support], support };
    for (const [limit, terms] of [['largestRise', put.up] as const, ['largestDrop', put.down] as const]) {
      const most = limits[limit];
      if (most !== undefined && terms.length > 0) own.push({ terms, most: most * mm, place: { limit, ...place } });
    }
    if (relaxed === undefined) {
      const touched = variables.add(`touch${support + 1}`, 0, 1, true);
      switches.push([touched, 1]);
      for (const [terms, most] of put.bounds) ties.push({ terms: [...terms, [touched, -most]], most: 0 });
      const rest = variables.add(`rest${support + 1}`, 0, Number.POSITIVE_INFINITY);
      remains.push([rest, 1]);
      const off = departures[support] * mm;
      ties.push({ terms: [...put.change, [rest, -1]], most: -off });
      ties.push({ terms: [...put.change.map(([v, c]) => [v, -c] as const), [rest, -1]], most: off });
    }
  }
  const slack = new Map(
    (relaxed ?? []).map((limit) => [limit, variables.add(`slack-${limit}`, 0, Number.POSITIVE_INFINITY)]),
  );
  const limited = rows.map((row, i) => {
    const { terms, most, place } = limitRow(row, change, departures, subject.margins?.[i] ?? 0);
    // A row that nothing here moves either holds, as the check of a line sees it, or does not; the rest are kept exactly, those with a slack by it.
    const moved = terms.length > 0 || slack.has(place.limit);
    return { terms, most: most + (moved ? 0 : problemUnit[place.limit] * limitTolerance[place.limit]), place };
  });
  const withSlack = [...limited, ...own].map((row): MendRow => {
    const give = slack.get(row.place.limit);
    return give === undefined ? row : { ...row, terms: [...row.terms, [give, -1]] };
  });
  const objectives = [...slack].map(([, variable]): Terms => [[variable, 1]]);
  if (relaxed !== undefined)
    return { variables: variables.all, objectives: [objectives.flat(), work], rows: withSlack, ties, change };
  if (task.objective === 'flattest') {
    const greatest = variables.add('greatest-grade', Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
    for (const row of subject.ceiling ?? []) {
      const { terms, most } = limitRow({ ...row, bound: 0 }, change, departures, 0);
      ties.push({ terms: [...terms, [greatest, -1]], most });
    }
    return { variables: variables.all, objectives: [[[greatest, 1]], work], rows: withSlack, ties, change };
  }
  const finish = adjuster.kind === 'nut' && subject.toPlan !== false ? remains : work;
  const inTurn = task.objective === 'fewest' ? [switches, finish] : [work, switches];
  return { variables: variables.all, objectives: inTurn, rows: withSlack, ties, change };
}

interface Put {
  readonly change: Terms;
  /** Its size, mm. */
  readonly work: Terms;
  readonly up: Terms;
  readonly down: Terms;
  /** Sums that are bounded by a number of their own when the support is touched, and are nothing when not. */
  readonly bounds: readonly (readonly [terms: Terms, most: number])[];
}

function adjusterVariables(
  adjuster: Adjuster,
  support: number,
  variables: Variables,
  { rise, drop }: { rise: number; drop: number },
): Put {
  if (adjuster.kind === 'nut') {
    const up: Terms = [[variables.add(`up${support + 1}`, 0, rise), 1]];
    const down: Terms = [[variables.add(`down${support + 1}`, 0, drop), 1]];
    const bounds = [[up, rise] as const, [down, drop] as const];
    return { change: [...up, [down[0][0], -1]], work: [...up, ...down], up, down, bounds };
  }
  const pieces = adjuster.thicknesses.map((_, t): readonly [number, number] => [
    variables.add(`pieces${support + 1}-${t + 1}`, 0, adjuster.most, true),
    1,
  ]);
  const up = pieces.map(([variable], t) => [variable, adjuster.thicknesses[t] * mm] as const);
  return { change: up, work: up, up, down: [], bounds: [[pieces, adjuster.most]] };
}

function limitRow(row: LimitRow, change: readonly Terms[], departures: ArrayLike<number>, margin: number): MendRow {
  const unit = problemUnit[row.place.limit];
  const terms: Terms = [];
  let now = row.planned;
  for (let i = 0; i < row.weights.length; i++) {
    const weight = row.weights[i];
    now += weight * departures[i];
    const coefficient = (row.sign * weight * unit) / mm;
    if (Math.abs(coefficient) < negligible) continue;
    for (const [variable, factor] of change[i]) terms.push([variable, coefficient * factor]);
  }
  return { terms, most: unit * (row.sign * (row.bound - now) - margin), place: row.place };
}

/** A support this far away counts for nothing: a change of 25 mm there would move the limit by less than its tolerance. */
const negligible = 1e-10;

/**
 * Room to keep to each limit so that it holds nineteen times in twenty whatever the readings leave open, but never more than the
 * plan itself has: where the plan runs at its limit, no work makes it surer.
 */
export function limitMargins(
  rows: readonly LimitRow[],
  atBest: ArrayLike<number>,
  { covariance }: Belief,
): Float64Array {
  const n = atBest.length;
  return Float64Array.from(rows, (row) => {
    let variance = 0;
    let best = row.planned;
    for (let i = 0; i < n; i++) {
      best += row.weights[i] * atBest[i];
      if (row.weights[i] === 0) continue;
      for (let j = 0; j < n; j++) variance += row.weights[i] * row.weights[j] * covariance[i * n + j];
    }
    const spare = row.sign * (row.bound - best);
    return Math.max(0, Math.min(oneInTwenty * Math.sqrt(Math.max(0, variance)), spare));
  });
}

/** Normal quantile of one in twenty (Abramowitz & Stegun, table 26.5). */
const oneInTwenty = 1.6448536269514722;
