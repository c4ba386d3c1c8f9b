import {
  type FoundProfile,
  firstStands,
  gradePointsOf,
  judgeProfile,
  type Nodes,
  nodesOf,
  type ProfileProblem,
  type ProfileTask,
  plainestProblem,
  profileProblem,
  roundedPoints,
  type Setting,
  type Stand,
  steeperStands,
} from '../../core/study/profile/index.ts';
import type { GradePoint } from '../../core/track/types.ts';
import type { Solver } from '../survey/solver.ts';

/** Limits that can stand in the way of any profile at all. */
export type ProfileLimit = 'clearances' | 'steepest' | 'vertical-radius' | 'grades';

export type BestProfile =
  | {
      readonly kind: 'best';
      /** Proven: no profile whose curves begin and end at the nodes has a lesser ruling grade; solver's bound. */
      readonly least: number;
      readonly bound: number;
      readonly proven: boolean;
      /** No profile at all that keeps the limits has less, wherever its curves begin and end. */
      readonly floor: number;
      /** The best as found, and as a builder sets it; `kept` says whether the rounded one still keeps every limit, `misses` which it does not. */
      readonly exact: FoundProfile;
      readonly rounded: FoundProfile;
      readonly kept: boolean;
      readonly misses: readonly ProfileMiss[];
      /** What its places and heights are whole steps of. */
      readonly setting: Setting;
    }
  /** Limits of which each, alone left out, would let the others be kept; none: not even that would do. */
  | { readonly kind: 'impossible'; readonly inTheWay: readonly ProfileLimit[] };

/** A limit that a profile misses: where, m, by how much it may be and by how much it is; both m, or ratios for a grade. */
export interface ProfileMiss {
  readonly limit: 'heights' | 'clearances' | 'steepest' | 'vertical-radius';
  readonly at: number;
  readonly asked: number;
  readonly found: number;
}

/** Rounds of adding stands of the train that turned out steeper; each adds tops of parabolas, so a few do. */
const mostRounds = 40;

/** A stand may be steeper than the least ruling grade by so much, per cent: far below what can be laid. */
const steeper = 1e-6;

/** The ruling grade is held to so much above its least while the plainest profile is looked for, per cent. */
const held = 1e-5;

/** Ways tried of asking for a little more than is wanted, so that the rounded profile keeps what is wanted. */
const mostTries = 6;

/** What rounding may miss and the limit still count as kept: below what a builder can tell. */
const tolerance = { height: 1e-4, clearance: 1e-4, radiusShare: 1e-3, grade: 1e-4 };

/**
 * The profile with the least ruling grade on a given plan, proven by linear programming, and what it becomes at what a builder sets. Throws
 * RangeError for a task that says nothing.
 */
export function bestProfile(solver: Solver, task: ProfileTask, setting: Setting): BestProfile {
  checkTask(task);
  const nodes = nodesOf(task);
  const solved = settle(solver, task, nodes);
  if (solved === null) return { kind: 'impossible', inTheWay: inTheWay(solver, task, nodes) };
  const loose = solver(profileProblem(task, nodes, solved.stands, true));
  if (loose.status !== 'optimal') throw new Error('The floor under the ruling grade could not be found.');
  const exact = judgeProfile(task, gradePointsOf(nodes, solved.values, task.verticalRadius));
  return {
    kind: 'best',
    least: solved.least / 100,
    bound: solved.bound / 100,
    proven: solved.proven,
    floor: loose.bound / 100,
    exact,
    ...roundedBest(solver, task, nodes, setting, exact),
  };
}

/** Heights of the least ruling grade alone, exact and with as many pieces as come; null when none keep what is asked. For looking at many plans. */
export function leastProfile(solver: Solver, task: ProfileTask): readonly GradePoint[] | null {
  checkTask(task);
  const nodes = nodesOf(task);
  const solved = settle(solver, task, nodes, (_problem, answer) => ({ values: answer.values, proven: true }));
  return solved === null ? null : gradePointsOf(nodes, solved.values, task.verticalRadius);
}

/**
 * Ways of rounding, tried in turn until one keeps every limit: nodes so many times as far apart (a longer curve bends less for the same step of height), heights to so
 * much of the step.
 */
const roundings = [
  { apart: 1, finer: 1 },
  { apart: 2, finer: 1 },
  { apart: 4, finer: 1 },
  { apart: 2, finer: 0.5 },
  { apart: 1, finer: 0.1 },
] as const;

interface Rounded {
  readonly rounded: FoundProfile;
  readonly kept: boolean;
  readonly misses: readonly ProfileMiss[];
  readonly setting: Setting;
}

/** The first way of rounding that keeps every limit; else the one that misses the fewest. */
function roundedBest(solver: Solver, task: ProfileTask, nodes: Nodes, setting: Setting, exact: FoundProfile): Rounded {
  let best: Rounded | null = null;
  for (const { apart, finer } of roundings) {
    const own = { ...setting, height: setting.height * finer };
    const wide = { ...task, every: task.every * apart };
    const at = apart === 1 ? nodes : nodesOf(wide);
    const solved = apart === 1 ? null : settle(solver, wide, at);
    if (apart !== 1 && solved === null) continue;
    const points = solved === null ? exact.points : gradePointsOf(at, solved.values, task.verticalRadius);
    const next = roundedAskingMore(solver, wide, at, own, points);
    if (next.kept) return next;
    if (best === null || next.misses.length < best.misses.length) best = next;
  }
  return best ?? roundedAskingMore(solver, task, nodes, setting, exact.points);
}

/** Rounds; where a limit is then missed, asks for as much more and rounds again. */
function roundedAskingMore(
  solver: Solver,
  task: ProfileTask,
  nodes: Nodes,
  setting: Setting,
  points: readonly GradePoint[],
): Rounded {
  let best = judgeProfile(task, roundedPoints(points, setting));
  let asked = task;
  for (let turn = 1; turn < mostTries && missesOf(task, best).length > 0; turn++) {
    const short = Math.max(0, -best.clearanceSpare);
    asked = {
      ...asked,
      verticalRadius: asked.verticalRadius * Math.max(1, task.verticalRadius / best.verticalRadius),
      steepest: Math.min(asked.steepest, asked.steepest - (best.steepest - task.steepest)),
      clearances: asked.clearances.map((one) => ({ ...one, least: one.least + short })),
    };
    const solved = settle(solver, asked, nodes);
    if (solved === null) break;
    const next = judgeProfile(task, roundedPoints(gradePointsOf(nodes, solved.values, asked.verticalRadius), setting));
    if (missesOf(task, next).length <= missesOf(task, best).length) best = next;
  }
  const misses = missesOf(task, best);
  return { rounded: best, kept: misses.length === 0, misses, setting };
}

/** Limits missed by more than a builder can tell. */
function missesOf(task: ProfileTask, found: FoundProfile): ProfileMiss[] {
  const { at } = found;
  const misses: ProfileMiss[] = [];
  if (found.heightMissed > tolerance.height) {
    misses.push({ limit: 'heights', at: at.heightMissed, asked: 0, found: found.heightMissed });
  }
  if (found.clearanceSpare < -tolerance.clearance) {
    misses.push({ limit: 'clearances', at: at.clearanceSpare, asked: 0, found: found.clearanceSpare });
  }
  if (found.steepest > task.steepest + tolerance.grade) {
    misses.push({ limit: 'steepest', at: at.steepest, asked: task.steepest, found: found.steepest });
  }
  if (found.verticalRadius < task.verticalRadius * (1 - tolerance.radiusShare)) {
    misses.push({
      limit: 'vertical-radius',
      at: at.verticalRadius,
      asked: task.verticalRadius,
      found: found.verticalRadius,
    });
  }
  return misses;
}

interface Settled {
  readonly values: Float64Array;
  readonly stands: readonly Stand[];
  readonly least: number;
  readonly bound: number;
  readonly proven: boolean;
}

/** Which of all profiles as good is taken. */
type Chooser = (
  problem: ProfileProblem,
  answer: { readonly status: string; readonly values: Float64Array; readonly value: number },
) => { values: Float64Array; proven: boolean };

/** Solves, adding stands that are steeper, until the least ruling grade holds everywhere; then takes the plainest of all as good. */
function settle(
  solver: Solver,
  task: ProfileTask,
  nodes: Nodes,
  choose: Chooser = (problem, answer) => plainest(solver, problem, nodes, answer),
): Settled | null {
  const stands = firstStands(task, nodes);
  for (let round = 0; round < mostRounds; round++) {
    const problem = profileProblem(task, nodes, stands);
    const answer = solver(problem);
    if (answer.status === 'infeasible') return null;
    if (answer.status === 'unknown') throw new Error('The solver found no profile in time.');
    const found = choose(problem, answer);
    const more = steeperStands(task, nodes, found.values, answer.value, steeper + held);
    if (more.length === 0) {
      return { ...found, stands, least: answer.value, bound: answer.bound };
    }
    stands.push(...more);
  }
  throw new Error('The steepest stand of the train kept moving; the profile could not be settled.');
}

function plainest(
  solver: Solver,
  problem: ProfileProblem,
  nodes: Nodes,
  best: { readonly status: string; readonly values: Float64Array; readonly value: number },
): { values: Float64Array; proven: boolean } {
  const answer = solver(plainestProblem(problem, nodes, best.value + held));
  const proven = best.status === 'optimal';
  return answer.status === 'optimal' ? { values: answer.values, proven } : { values: best.values, proven };
}

/** What would have to go for the rest to be kept. */
function inTheWay(solver: Solver, task: ProfileTask, nodes: Nodes): ProfileLimit[] {
  const without: Readonly<Record<ProfileLimit, Partial<ProfileTask>>> = {
    clearances: { clearances: [] },
    steepest: { steepest: 10 },
    'vertical-radius': { verticalRadius: 1e-3 },
    grades: { grades: [] },
  };
  return (Object.keys(without) as ProfileLimit[]).filter((limit) => {
    const eased = { ...task, ...without[limit] };
    return solver(profileProblem(eased, nodes, [])).status !== 'infeasible';
  });
}

function checkTask({
  track,
  heights,
  grades,
  verticalRadius,
  steepest,
  curveLength,
  window,
  every,
}: ProfileTask): void {
  if (heights.length < 1) throw new RangeError('A profile needs at least one height to be met.');
  const places = [...heights, ...grades].map(({ chainage }) => chainage);
  const beyond = places.find((s) => !(s >= 0 && s <= track.length));
  if (beyond !== undefined) throw new RangeError(`The place at ${beyond} m is not on the track of ${track.length} m.`);
  if (!(verticalRadius > 0 && steepest > 0 && every > 0 && curveLength >= 0 && window >= 0)) {
    throw new RangeError('Radius, steepest grade and steps are above 0, a train and what a curve is worth at least 0.');
  }
}
