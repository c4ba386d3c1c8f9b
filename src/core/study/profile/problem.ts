import { square } from '../../math/index.ts';
import { intervalAt, type Nodes, turnedTo } from './nodes.ts';
import type { ProfileTask } from './types.ts';

export type Terms = readonly (readonly [variable: number, coefficient: number])[];

/** A linear problem: the least value of the objective with every row at most so much. */
export interface ProfileProblem {
  readonly variables: readonly {
    readonly name: string;
    readonly least: number;
    readonly most: number;
    readonly whole: boolean;
  }[];
  readonly objective: Terms;
  readonly rows: readonly { readonly terms: Terms; readonly most: number }[];
}

/** Where the head and the rear of the train stand while its mean grade is held down; equal with no window. */
export interface Stand {
  readonly from: number;
  readonly to: number;
  /** With no window: the curvature on which side of the place counts. */
  readonly side: 'before' | 'after';
}

/** Grades go in in per cent, heights in mm: numbers of one size solve best. */
const percent = 100;
const mm = 1000;

/** Heights have no bound of their own; this is only so that none is infinite, mm. */
const farthest = 1e6;

/** Variable of the ruling grade, of the grade and of the height at node k of n. */
export const ruling = 0;
export const gradeAt = (k: number): number => 1 + k;
export const heightAt = (k: number, n: number): number => 1 + n + k;

/** Stands of the train that every problem begins with: heads at every node and rears at every node. */
export function firstStands({ window, track }: ProfileTask, { at }: Nodes): Stand[] {
  const span = Math.min(window, track.length);
  if (span === 0) {
    return at.flatMap((s): Stand[] => (['before', 'after'] as const).map((side) => ({ from: s, to: s, side })));
  }
  return at.flatMap((s): Stand[] => [
    ...(s - span >= 0 ? [{ from: s - span, to: s, side: 'before' as const }] : []),
    ...(s + span <= track.length ? [{ from: s, to: s + span, side: 'after' as const }] : []),
  ]);
}

/**
 * The heights of a line as a linear problem. Unknown are the grade and the height at every node; between nodes the grade runs
 * linearly, a parabola of height, so heights follow by trapezoids, and the vertical curvature is the change of grade over the
 * distance. Compensated grade is grade plus curveLength·|κ|, or the means of both over the train.
 *
 * `loose` gives the problem that no profile at all can escape, whatever its curves: between nodes the grade may do anything that the least
 * radius allows, so that a height may differ from the trapezoid by κh²/4 (the most that ∫g departs when |g′| ≤ κ), and a height away
 * from nodes by κh². Its least value is a floor under every profile's.
 */
export function profileProblem(
  task: ProfileTask,
  nodes: Nodes,
  stands: readonly Stand[],
  loose = false,
): ProfileProblem {
  const { at } = nodes;
  const n = at.length;
  const bend = 1 / task.verticalRadius;
  const rows: { terms: Terms; most: number }[] = [];
  const steepest = task.steepest * percent;
  const variables = [
    { name: 'ruling', least: -farthest, most: farthest, whole: false },
    ...at.map((_, k) => ({ name: `grade${k}`, least: -steepest, most: steepest, whole: false })),
    ...at.map((_, k) => ({ name: `height${k}`, least: -farthest, most: farthest, whole: false })),
  ];
  const between = (terms: Terms, low: number, high: number): void => {
    rows.push({ terms, most: high }, { terms: negated(terms), most: -low });
  };
  for (let k = 0; k + 1 < n; k++) {
    const run = at[k + 1] - at[k];
    const half = (run * mm) / (2 * percent);
    const give = loose ? ((bend * run * run) / 4) * mm : 0;
    between(
      [
        [heightAt(k + 1, n), 1],
        [heightAt(k, n), -1],
        [gradeAt(k), -half],
        [gradeAt(k + 1), -half],
      ],
      -give,
      give,
    );
    const change = bend * run * percent;
    between(
      [
        [gradeAt(k + 1), 1],
        [gradeAt(k), -1],
      ],
      -change,
      change,
    );
  }
  const give = (s: number): number => {
    const k = intervalAt(nodes, s);
    const away = Math.min(s - at[k], at[k + 1] - s);
    return loose && away > 1e-9 ? bend * square(at[k + 1] - at[k]) * mm : 0;
  };
  for (const { chainage, height } of task.heights) {
    const room = give(chainage);
    between(heightTerms(nodes, chainage), height * mm - room, height * mm + room);
  }
  for (const { chainage, grade } of task.grades) {
    between([[gradeAt(nearestNode(nodes, chainage)), 1]], grade * percent, grade * percent);
  }
  for (const { above, below, fixed, least } of task.clearances) {
    const terms = [
      ...(below === null ? [] : heightTerms(nodes, below)),
      ...(above === null ? [] : negated(heightTerms(nodes, above))),
    ];
    const held = above !== null && below !== null ? 0 : (above === null ? fixed : -fixed) * mm;
    const room = (above === null ? 0 : give(above)) + (below === null ? 0 : give(below));
    rows.push({ terms, most: held - least * mm + room });
  }
  // What holds at every place holds in the mean from node to node as well: no profile escapes that either.
  const spans =
    loose && task.window === 0 ? at.slice(1).map((to, k): Stand => ({ from: at[k], to, side: 'before' })) : [];
  for (const stand of [...stands, ...spans]) {
    const room =
      stand.to > stand.from ? ((give(stand.from) + give(stand.to)) / (stand.to - stand.from) / mm) * percent : 0;
    const { terms, curves } = compensated(nodes, stand);
    for (const sign of signs(task.towards)) {
      rows.push({
        terms: [[ruling, -1], ...(sign === 1 ? terms : negated(terms))],
        most: -task.curveLength * curves * percent + room,
      });
    }
  }
  return {
    variables,
    objective: [[ruling, 1]],
    rows: rows.map(({ terms, most }) => ({ terms: collected(terms), most })),
  };
}

/**
 * The same problem with the ruling grade held and the changes of vertical curvature, 1/m, made least in sum: of all profiles as
 * good, one with few pieces.
 */
export function plainestProblem({ variables, rows }: ProfileProblem, nodes: Nodes, held: number): ProfileProblem {
  const { at } = nodes;
  const bendTerms = (k: number): Terms => {
    const run = at[k + 1] - at[k];
    return [
      [gradeAt(k + 1), 1 / run],
      [gradeAt(k), -1 / run],
    ];
  };
  const all = [...variables];
  const more = [...rows, { terms: [[ruling, 1]] as Terms, most: held }];
  const objective: [number, number][] = [];
  for (let k = 0; k + 1 < at.length; k++) {
    const change: Terms = [
      ...(k + 2 < at.length ? bendTerms(k + 1) : []),
      ...(k + 2 < at.length ? negated(bendTerms(k)) : []),
    ];
    if (change.length === 0) continue;
    const size = all.length;
    all.push({ name: `bend${k}`, least: 0, most: farthest, whole: false });
    objective.push([size, 1]);
    for (const one of [change, negated(change)]) more.push({ terms: collected([...one, [size, -1]]), most: 0 });
  }
  return { variables: all, objective, rows: more };
}

export const signs = (towards: ProfileTask['towards']): readonly (1 | -1)[] =>
  towards === 'both' ? [1, -1] : towards === 'end' ? [1] : [-1];

/** The mean grade of a stand, per cent, as terms, and the mean |curvature|, 1/m. */
function compensated(nodes: Nodes, { from, to, side }: Stand): { terms: Terms; curves: number } {
  if (from === to) {
    const k = nearestNode(nodes, from);
    return { terms: [[gradeAt(k), 1]], curves: nodes[side][k] };
  }
  const scale = percent / mm / (to - from);
  const terms = [...heightTerms(nodes, to), ...negated(heightTerms(nodes, from))].map(
    ([variable, coefficient]) => [variable, coefficient * scale] as const,
  );
  return { terms, curves: (turnedTo(nodes, to) - turnedTo(nodes, from)) / (to - from) };
}

/** Compensated grade of a stand in a solution, per cent. */
export function standGrade(
  { curveLength }: ProfileTask,
  nodes: Nodes,
  stand: Stand,
  sign: 1 | -1,
  values: ArrayLike<number>,
): number {
  const { terms, curves } = compensated(nodes, stand);
  return sign * sumOf(terms, values) + curveLength * curves * percent;
}

export const sumOf = (terms: Terms, values: ArrayLike<number>): number =>
  terms.reduce((sum, [variable, coefficient]) => sum + coefficient * values[variable], 0);

/** The height at any place, mm: of a parabola with the grades of the nodes on either side. */
function heightTerms(nodes: Nodes, s: number): Terms {
  const k = intervalAt(nodes, s);
  const run = nodes.at[k + 1] - nodes.at[k];
  const t = s - nodes.at[k];
  const curve = (t * t) / (2 * run);
  const unit = mm / percent;
  return [
    [heightAt(k, nodes.at.length), 1],
    [gradeAt(k), (t - curve) * unit],
    [gradeAt(k + 1), curve * unit],
  ];
}

function nearestNode(nodes: Nodes, s: number): number {
  const k = intervalAt(nodes, s);
  return s - nodes.at[k] <= nodes.at[k + 1] - s ? k : k + 1;
}

/** Every variable once. */
function collected(terms: Terms): Terms {
  const sums = new Map<number, number>();
  for (const [variable, coefficient] of terms) sums.set(variable, (sums.get(variable) ?? 0) + coefficient);
  return [...sums];
}

const negated = (terms: Terms): Terms => terms.map(([variable, coefficient]) => [variable, -coefficient]);
