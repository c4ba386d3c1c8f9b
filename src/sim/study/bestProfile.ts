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
      /** The best as found, and as a builder sets it; `kept` says whether the rounded one still keeps every limit. */
      readonly exact: FoundProfile;
      readonly rounded: FoundProfile;
      readonly kept: boolean;
    }
  /** Limits of which each, alone left out, would let the others be kept; none: not even that would do. */
  | { readonly kind: 'impossible'; readonly inTheWay: readonly ProfileLimit[] };

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

/** Rounds; where a limit is then missed, asks for as much more and rounds again. */
function roundedBest(
  solver: Solver,
  task: ProfileTask,
  nodes: Nodes,
  setting: Setting,
  exact: FoundProfile,
): { rounded: FoundProfile; kept: boolean } {
  let best = judgeProfile(task, roundedPoints(exact.points, setting));
  let asked = task;
  for (let turn = 1; turn < mostTries && !keeps(task, best); turn++) {
    const short = Math.max(0, -best.clearanceSpare);
    asked = {
      ...asked,
      verticalRadius: asked.verticalRadius * Math.max(1, task.verticalRadius / best.verticalRadius),
      steepest: Math.min(asked.steepest, asked.steepest - (best.steepest - task.steepest)),
      clearances: asked.clearances.map((one) => ({ ...one, least: one.least + short })),
    };
    const solved = settle(solver, asked, nodes);
    if (solved === null) break;
    best = judgeProfile(task, roundedPoints(gradePointsOf(nodes, solved.values, asked.verticalRadius), setting));
  }
  return { rounded: best, kept: keeps(task, best) };
}

const keeps = (task: ProfileTask, found: FoundProfile): boolean =>
  found.heightMissed <= tolerance.height &&
  found.clearanceSpare >= -tolerance.clearance &&
  found.verticalRadius >= task.verticalRadius * (1 - tolerance.radiusShare) &&
  found.steepest <= task.steepest + tolerance.grade;

interface Settled {
  readonly values: Float64Array;
  readonly stands: readonly Stand[];
  readonly least: number;
  readonly bound: number;
  readonly proven: boolean;
}

/** Solves, adding stands that are steeper, until the least ruling grade holds everywhere; then takes the plainest of all as good. */
function settle(solver: Solver, task: ProfileTask, nodes: Nodes): Settled | null {
  const stands = firstStands(task, nodes);
  for (let round = 0; round < mostRounds; round++) {
    const problem = profileProblem(task, nodes, stands);
    const answer = solver(problem);
    if (answer.status === 'infeasible') return null;
    if (answer.status === 'unknown') throw new Error('The solver found no profile in time.');
    const found = plainest(solver, problem, nodes, answer);
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
