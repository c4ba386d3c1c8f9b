import {
  chanceOfKeeping,
  checkLimits,
  type LimitSet,
  limitSet,
  lineShape,
  shimTable,
  workableChanges,
} from '../../core/survey/index.ts';
import type { Belief, MendTask, Survey } from '../../core/survey/types.ts';
import { easings, irreducible } from './conflicts.ts';
import { type MendWork, type Optimum, optimise } from './optimise.ts';
import { loadSolver, type Solver } from './solver.ts';
import type { Mend, MendProof } from './types.ts';

/** Where a browser finds the solver's WebAssembly file; Node needs none. */
export interface MendHooks {
  readonly wasmUrl?: string;
}

/**
 * How to put the line right: which supports to touch, by how much, in which order, proven to be the least that does it; or why
 * nothing need be done; or which limits cannot be kept together and what they would have to become.
 *
 * Only supports that the readings show to be off are touched, unless they alone cannot do it. Limits are kept with room for what the readings leave open where the
 * plan has such room, and without where that is too much to ask.
 */
export async function mend(survey: Survey, task: MendTask, { wasmUrl }: MendHooks = {}): Promise<Mend> {
  const { explanation, belief, input } = survey;
  const { departures } = explanation;
  const shape = lineShape(input);
  const set = limitSet(shape, task.limits, task.pairs);
  const before = checkLimits(set, departures);
  const unchanged = new Float64Array(departures.length);
  const probabilityBefore = chanceOfKeeping(set, belief, unchanged);
  const nothing = (reason: 'noise' | 'within-limits'): Mend => ({
    outcome: 'nothing-to-mend',
    reason,
    checks: before,
    probability: probabilityBefore,
  });
  if (explanation.noiseExplains) return nothing('noise');
  if (task.objective !== 'flattest' && before.every(({ holds }) => holds)) return nothing('within-limits');
  const kept = new Set([...task.locked, ...input.fixed]);
  const wrong = shape.supports.flatMap((_, i) => (departures[i] !== 0 ? [i] : []));
  const free = shape.supports.flatMap((_, i) => (kept.has(i) ? [] : [i]));
  const subject = { shape, task, departures, touchable: wrong.filter((i) => !kept.has(i)) };
  const around = { ...subject, touchable: free, toPlan: false };
  const solver = await loadSolver(wasmUrl);
  const found = firstPossible(solver, set, belief, [subject, around]);
  if (found === null) {
    return { outcome: 'impossible', ...whyNot(solver, { set, subject: around }, wrong), checks: before };
  }
  const { optimum } = found;
  const changes = workableChanges(optimum.changes, task.adjuster, set, departures);
  if (changes.every((change) => change === 0)) return nothing('within-limits');
  const mended = departures.map((departure, i) => departure + changes[i]);
  return {
    outcome: 'mended',
    objective: task.objective,
    others: found.subject === around,
    steps: shimTable(changes, task.adjuster, set, departures),
    proof: proofOf(optimum, task.objective),
    before,
    after: checkLimits(set, mended),
    probabilityBefore,
    probabilityAfter: chanceOfKeeping(set, belief, changes),
    departures: mended,
  };
}

/** The first of the subjects that can be done: with room to the limits before without, wrong supports alone before others too. */
function firstPossible(solver: Solver, set: LimitSet, belief: Belief, subjects: readonly MendWork['subject'][]) {
  for (const subject of subjects) {
    for (const room of [belief, null]) {
      const outcome = optimise(solver, { set, subject, room });
      if (outcome.kind === 'optimum') return { subject, optimum: outcome.optimum };
    }
  }
  return null;
}

/** Value and bound in SI: a count for the fewest, m for the least, a grade for the flattest. */
function proofOf({ value, bound, proven }: Optimum, objective: MendTask['objective']): MendProof {
  const unit = { fewest: 1, least: 1e-3, flattest: 1e-2 }[objective];
  const shown = objective === 'fewest' ? Math.round(value) : value * unit;
  return { optimal: proven, value: shown, bound: proven ? shown : bound * unit };
}

function whyNot(solver: Solver, work: Omit<MendWork, 'room'>, wrong: readonly number[]) {
  const { conflicts, together } = easings(solver, work);
  const strict = optimise(solver, { ...work, subject: { ...work.subject, relaxed: [] }, room: null });
  const set = strict.kind === 'infeasible' ? irreducible(solver, strict.problem) : [];
  const { touchable } = work.subject;
  const locked = wrong.filter((support) => !touchable.includes(support));
  const opened = {
    ...work,
    subject: { ...work.subject, touchable: [...touchable, ...locked], relaxed: [] },
    room: null,
  };
  const unlock = locked.length > 0 && optimise(solver, opened).kind === 'optimum' ? locked : [];
  return { conflicts, together, irreducible: set, unlock };
}
