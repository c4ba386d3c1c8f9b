import {
  extremeGrades,
  gradeRow,
  type LimitRow,
  type LimitSet,
  limitMargins,
  limitTolerance,
  lineAt,
  type MendSubject,
  mendProblem,
} from '../../core/survey/index.ts';
import type { Belief, LimitPlace, Limits, MendProblem, MendRow } from '../../core/survey/types.ts';
import type { LinearAnswer, Solver } from './solver.ts';

/** What the mending is worked out from. */
export interface MendWork {
  readonly set: LimitSet;
  readonly subject: Omit<MendSubject, 'margins' | 'ceiling'>;
  /** Keep room to the limits for what this leaves open; null: none. */
  readonly room: Belief | null;
}

export interface Optimum {
  /** m, one a support. */
  readonly changes: Float64Array;
  /** Value and proven bound of the first objective, in the problem's units. */
  readonly value: number;
  readonly bound: number;
  /** True when the solver proved every objective in turn. */
  readonly proven: boolean;
  /** What every relaxed limit was eased by, problem units, and the place that needed it. */
  readonly slacks: readonly (readonly [limit: keyof Limits, slack: number, place: LimitPlace])[];
}

export type Outcome =
  | { readonly kind: 'optimum'; readonly optimum: Optimum }
  | { readonly kind: 'infeasible'; readonly problem: MendProblem };

/** Rounds of cutting planes; a handful are enough for a parabola on every stretch. */
const mostRounds = 60;

/** An earlier objective is kept this near to its least while the next is minimised: rounding of the solver, problem units. */
const kept = 1e-6;

/**
 * The optimum of a task, or the problem that shows that its limits cannot be kept together. Grades are limited at every place of
 * the line: the problem starts with ends and middle of each stretch, and the exactly worst place of any stretch that is still too
 * steep is added until there is none. A problem with fewer places has no worse optimum than the whole, so the last answer,
 * which keeps the limit everywhere, is optimal for the whole; and a problem with fewer places that cannot be kept proves it for all.
 */
export function optimise(solver: Solver, { set, subject, room }: MendWork): Outcome {
  const rows = [...set.rows, ...startRows(set)];
  const ceiling = subject.task.objective === 'flattest' && subject.relaxed === undefined ? startCeiling(set) : [];
  const best = Float64Array.from(subject.shape.supports, (_, i) =>
    subject.touchable.includes(i) ? 0 : subject.departures[i],
  );
  for (let round = 0; round < mostRounds; round++) {
    const margins = room === null ? [] : limitMargins(rows, best, room);
    const problem = mendProblem({ ...subject, margins, ceiling }, rows);
    const answer = inTurn(solver, problem);
    if (answer === null) return { kind: 'infeasible', problem };
    const changes = changesOf(problem, answer.values);
    const line = changes.map((change, i) => change + subject.departures[i]);
    const cuts =
      subject.relaxed === undefined ? tooSteep(set, line, room, best) : tooSteepRelaxed(set, line, problem, answer);
    const higher = ceiling.length === 0 ? [] : aboveCeiling(set, line, answer.value);
    if (cuts.length === 0 && higher.length === 0) {
      const slacks = slacksOf(problem, answer.values, subject.relaxed ?? []);
      return { kind: 'optimum', optimum: { changes, ...answer, slacks } };
    }
    rows.push(...cuts);
    ceiling.push(...higher);
  }
  throw new Error('The worst grades of the line kept moving; its limits could not be settled.');
}

const gradeLimits = [['greatestGrade', 1] as const, ['leastGrade', -1] as const];

/** Ends and middle of every stretch, for each limit on grade. */
function startRows(set: LimitSet): LimitRow[] {
  return gradeLimits.flatMap(([limit]) => {
    const bound = set.limits[limit];
    return bound === undefined ? [] : startPlaces(set, limit, bound);
  });
}

const startPlaces = (set: LimitSet, limit: 'greatestGrade' | 'leastGrade', bound: number): LimitRow[] =>
  set.forms.flatMap(({ stretch }) =>
    [stretch.from, (stretch.from + stretch.to) / 2, stretch.to].map((s) =>
      gradeRow(set.shape, stretch, s, limit, bound),
    ),
  );

/** Which way the plan climbs from the first support to the last. */
export function climbOf({ shape }: LimitSet): 1 | -1 {
  const { supports } = shape;
  return lineAt(shape, supports[supports.length - 1], 0).planned >= lineAt(shape, supports[0], 0).planned ? 1 : -1;
}

const startCeiling = (set: LimitSet): LimitRow[] =>
  startPlaces(set, climbOf(set) === 1 ? 'greatestGrade' : 'leastGrade', 0);

function aboveCeiling(set: LimitSet, line: Float64Array, greatestPercent: number): LimitRow[] {
  const sign = climbOf(set);
  const limit = sign === 1 ? 'greatestGrade' : 'leastGrade';
  return extremeGrades(set, line, sign).flatMap(({ stretch, chainage, grade }) =>
    sign * grade - greatestPercent / 100 > limitTolerance[limit]
      ? [gradeRow(set.shape, stretch, chainage, limit, 0)]
      : [],
  );
}

/** Rows of the worst places of all stretches that exceed a limit on grade, room included. */
function tooSteep(set: LimitSet, line: Float64Array, room: Belief | null, best: Float64Array): LimitRow[] {
  return gradeLimits.flatMap(([limit, sign]) => {
    const bound = set.limits[limit];
    if (bound === undefined) return [];
    return extremeGrades(set, line, sign).flatMap(({ stretch, chainage, grade }) => {
      const row = gradeRow(set.shape, stretch, chainage, limit, bound);
      const margin = room === null ? 0 : limitMargins([row], best, room)[0];
      return sign * (grade - bound) + margin > limitTolerance[limit] / 2 ? [row] : [];
    });
  });
}

/** The same where a limit has slack: it may be exceeded by what the slack came to. */
function tooSteepRelaxed(
  set: LimitSet,
  line: Float64Array,
  { variables }: MendProblem,
  { values }: { readonly values: Float64Array },
): LimitRow[] {
  return gradeLimits.flatMap(([limit, sign]) => {
    const bound = set.limits[limit];
    if (bound === undefined) return [];
    const slack = variables.findIndex(({ name }) => name === `slack-${limit}`);
    const given = slack < 0 ? 0 : values[slack] / 100;
    return extremeGrades(set, line, sign).flatMap(({ stretch, chainage, grade }) =>
      sign * (grade - bound) - given > limitTolerance[limit] / 2
        ? [gradeRow(set.shape, stretch, chainage, limit, bound)]
        : [],
    );
  });
}

interface InTurn {
  readonly values: Float64Array;
  readonly value: number;
  readonly bound: number;
  readonly proven: boolean;
}

/** Minimises the objectives one after the other; null when there is no answer at all. */
function inTurn(solver: Solver, { variables, objectives, rows, ties }: MendProblem): InTurn | null {
  const held: Pick<MendRow, 'terms' | 'most'>[] = [];
  let best: InTurn | null = null;
  for (const objective of objectives) {
    const answer: LinearAnswer = solver({ variables, objective, rows: [...rows, ...ties, ...held] });
    if (answer.status === 'infeasible' || answer.status === 'unknown') {
      if (best === null && answer.status === 'unknown') throw new Error('The solver found no answer in time.');
      // A later objective that fails by rounding leaves the earlier answer standing, unproven.
      return best === null ? null : { ...best, proven: false };
    }
    const { value, bound, values } = answer;
    const sure = answer.status === 'optimal';
    best = firstAnswer(best, { values, value, bound, proven: sure });
    held.push({ terms: objective, most: value + kept });
  }
  return best;
}

/** Values of the latest objective, value and bound of the first; proven when all are. */
const firstAnswer = (first: InTurn | null, latest: InTurn): InTurn =>
  first === null ? latest : { ...first, values: latest.values, proven: first.proven && latest.proven };

function changesOf({ change, variables }: MendProblem, values: Float64Array): Float64Array {
  return Float64Array.from(change, (terms) =>
    terms.reduce((sum, [variable, coefficient]) => {
      const value = variables[variable].whole ? Math.round(values[variable]) : values[variable];
      return sum + (coefficient * value) / 1e3;
    }, 0),
  );
}

/** The slack of each relaxed limit and the place where it is used up. */
function slacksOf(
  { variables, rows }: MendProblem,
  values: Float64Array,
  relaxed: readonly (keyof Limits)[],
): Optimum['slacks'] {
  return relaxed.flatMap((limit) => {
    const at = variables.findIndex(({ name }) => name === `slack-${limit}`);
    let tightest: MendRow | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const row of rows) {
      if (row.place.limit !== limit) continue;
      const room =
        row.most - row.terms.reduce((sum, [variable, coefficient]) => sum + coefficient * values[variable], 0);
      if (room >= least) continue;
      least = room;
      tightest = row;
    }
    return tightest === null ? [] : [[limit, values[at], tightest.place] as const];
  });
}

/** Whether the rows of a problem can be kept together, its ties included. */
export const canBeKept = (solver: Solver, { variables, ties }: MendProblem, rows: readonly MendRow[]): boolean =>
  solver({ variables, objective: [], rows: [...rows, ...ties] }).status !== 'infeasible';
