import { problemUnit } from '../../core/survey/index.ts';
import type { LimitPlace, Limits, MendProblem, MendRow } from '../../core/survey/types.ts';
import { canBeKept, type MendWork, optimise } from './optimise.ts';
import type { Solver } from './solver.ts';
import type { LimitConflict } from './types.ts';

/** A slack smaller than this gives nothing, problem units. */
const nothing = 1e-5;

/** What has to give way: each limit that alone could be eased to let all the others be kept, or else the least easing of all together. */
export function easings(
  solver: Solver,
  work: Omit<MendWork, 'room'>,
): { readonly conflicts: LimitConflict[]; readonly together: boolean } {
  const { limits } = work.set;
  const kinds = (Object.keys(limits) as (keyof Limits)[]).filter((limit) => limits[limit] !== undefined);
  const alone = kinds.flatMap((limit) => eased(solver, work, [limit]));
  return alone.length > 0
    ? { conflicts: alone, together: false }
    : { conflicts: eased(solver, work, kinds), together: true };
}

function eased(
  solver: Solver,
  { set, subject }: Omit<MendWork, 'room'>,
  relaxed: readonly (keyof Limits)[],
): LimitConflict[] {
  const outcome = optimise(solver, { set, subject: { ...subject, relaxed }, room: null });
  if (outcome.kind === 'infeasible') return [];
  return outcome.optimum.slacks.flatMap(([limit, slack, place]): LimitConflict[] => {
    const bound = set.limits[limit];
    if (slack <= nothing || bound === undefined) return [];
    const by = slack / problemUnit[limit];
    return [{ limit, place, bound, needed: easedBound(limit, bound, by) }];
  });
}

function easedBound(limit: keyof Limits, bound: number, by: number): number {
  if (limit === 'leastRadius') return 1 / (1 / bound + by);
  return limit === 'leastGrade' || limit === 'headroom' ? bound - by : bound + by;
}

/**
 * Limits at places that cannot be kept together, of which none can be left out without the rest becoming possible: found by
 * leaving blocks of rows out, half of all at first, then ever smaller ones.
 */
export function irreducible(solver: Solver, problem: MendProblem): LimitPlace[] {
  let rows: readonly MendRow[] = problem.rows;
  for (let block = rows.length >> 1; block >= 1; block = block === 1 ? 0 : block >> 1) {
    for (let from = 0; from < rows.length; ) {
      const rest = [...rows.slice(0, from), ...rows.slice(from + block)];
      if (rest.length < rows.length && !canBeKept(solver, problem, rest)) rows = rest;
      else from += block;
    }
  }
  return rows.map(({ place }) => place);
}
