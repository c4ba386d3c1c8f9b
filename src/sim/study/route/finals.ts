import { createProbing } from '../../../core/study/probing.ts';
import { numbersAt, unbeatenOf, type Weighed } from '../../../core/study/search/index.ts';
import { nextTurn } from '../../runTrial.ts';
import { closestCall, passesBy } from '../gauges.ts';
import type { ProbeBy } from '../sweep.ts';
import type { Exactness, Probe } from '../types.ts';
import { layPresent, layRoute, type RouteGround } from './layRoute.ts';
import type { RouteAim, RouteFound, RouteHooks, RouteQuestion } from './types.ts';
import { grained, wishes } from './wishes.ts';

/** Routes run in full at the end: the best by the quasi-static pass, so that its order may prove wrong by a few; of a front as many as one can look through. */
const finalists = { grade: 1, margin: 5, front: 16 } as const satisfies Readonly<Record<RouteAim, number>>;

/** A margin where nothing can happen at all, as a share. */
const nothingCanHappen = 10;

export const runTrials = (probe: ProbeBy, { trialIds }: RouteQuestion, { scene }: RouteFound, exactness: Exactness) =>
  probe({ scene, settings: [], trialIds, exactness, withoutTakes: true });

/** Smallest margin as a share; a train that does not arrive has none. */
export function marginOf(probe: Probe, { gauge }: RouteQuestion): number | null {
  if (!probe.ok) return null;
  const share = closestCall(probe, gauge)?.share ?? nothingCanHappen;
  return probe.trials.every(({ outcome }) => outcome === 'arrived') ? share : Math.min(share, 0);
}

/** Places that are run in full: all that keep the limits where they are few; else the best few of a single aim, and of a front those spread over it, the ends of each wish among them. */
export function finalistsOf(aim: RouteAim, seen: readonly Weighed[]): Weighed[] {
  const kept = seen.filter(({ worth }) => worth.missed === 0);
  if (aim !== 'grade' && kept.length <= finalists.front) return kept;
  if (aim !== 'front') {
    const sign = wishes[aim][0] === 'least' ? 1 : -1;
    return kept.sort((a, b) => sign * (a.worth.values[0] - b.worth.values[0])).slice(0, finalists[aim]);
  }
  const front = unbeatenOf(seen, wishes.front);
  if (front.length <= finalists.front) return front;
  const spans = wishes.front.map((_, k) => {
    const own = front.map(({ worth }) => worth.values[k]);
    return { low: Math.min(...own), span: Math.max(...own) - Math.min(...own) || 1 };
  });
  const placed = front.map((one) => ({
    one,
    at: one.worth.values.map((value, k) => (value - spans[k].low) / spans[k].span),
  }));
  const taken = wishes.front.map((wish, k) =>
    placed.reduce((best, next) =>
      (wish === 'least' ? next.at[k] < best.at[k] : next.at[k] > best.at[k]) ? next : best,
    ),
  );
  const chosen = new Set(taken);
  // Then always the one farthest from all that are taken.
  const gap = (a: (typeof placed)[number], b: (typeof placed)[number]): number =>
    a.at.reduce((sum, value, k) => sum + (value - b.at[k]) * (value - b.at[k]), 0);
  while (chosen.size < finalists.front) {
    const nearest = (one: (typeof placed)[number]): number => Math.min(...[...chosen].map((other) => gap(one, other)));
    chosen.add(placed.reduce((best, next) => (nearest(next) > nearest(best) ? next : best)));
  }
  return placed.flatMap((one) => (chosen.has(one) ? [one.one] : []));
}

/** The finalists with heights as a builder sets them, run by the quasi-static pass and in full. */
export async function runFinals(
  ground: RouteGround,
  finals: readonly Weighed[],
  probe: ProbeBy,
  hooks: RouteHooks,
  done: number,
  found: ReadonlyMap<string, RouteFound>,
): Promise<RouteFound[]> {
  const { question } = ground;
  const routes: RouteFound[] = [];
  for (const { at, worth } of finals) {
    await nextTurn({}, 0);
    const quickMargin = question.aim === 'grade' ? null : worth.values[worth.values.length - 1];
    if (hooks.stopped?.()) {
      // Heights are found and rounded by a solver that takes its time: once stopped they are given as they were found.
      const known = found.get(at.join());
      if (known !== undefined) routes.push(known);
      continue;
    }
    const laid = layRoute(ground, numbersAt(question.numbers, at), true);
    if (laid.ok) routes.push({ ...laid.route, quickMargin });
  }
  if (question.trialIds.length === 0) return routes;
  const all = done + routes.length;
  const probing = createProbing(([k]) => inFull(question, routes[k], probe), {
    ...hooks,
    onProgress: (ready) => hooks.onProgress?.(done + ready, all),
  });
  const run = await probing.at(routes.map((_, k) => [k]));
  return run.map((one, k) => one ?? routes[k]);
}

async function inFull(question: RouteQuestion, route: RouteFound, probe: ProbeBy): Promise<RouteFound> {
  const quick = await runTrials(probe, question, route, 'steady');
  const full = await runTrials(probe, question, route, 'run');
  const passes = passesBy(question.gauge);
  return {
    ...route,
    quickMargin: marginOf(quick, question),
    margin: marginOf(full, question),
    quickPasses: passes(quick),
    agrees: passes(quick) === passes(full),
    probe: full,
  };
}

export async function measuredPresent(
  ground: RouteGround,
  probe: ProbeBy,
  stopped: () => boolean,
): Promise<RouteFound | null> {
  const laid = layPresent(ground);
  if (!laid.ok) return null;
  return stopped() || ground.question.trialIds.length === 0 ? laid.route : inFull(ground.question, laid.route, probe);
}

/** What is answered: by full runs where they were made, by the quasi-static pass where not. */
export function chosenOf({ aim }: RouteQuestion, routes: readonly RouteFound[]): RouteFound[] {
  const margin = (one: RouteFound): number => one.margin ?? one.quickMargin ?? Number.NEGATIVE_INFINITY;
  if (aim === 'grade') return routes.slice(0, 1);
  if (aim === 'margin') {
    const run = routes.some((one) => one.margin !== null) ? routes.filter((one) => one.margin !== null) : routes;
    return run.length === 0 ? [] : [run.reduce((best, one) => (margin(one) > margin(best) ? one : best))];
  }
  const weighed = routes.map((one, k) => ({
    at: [k],
    worth: { values: [grained(one.ruling * 100), grained(one.area), grained(margin(one))], missed: 0 },
  }));
  return unbeatenOf(weighed, wishes.front)
    .map(({ at }) => routes[at[0]])
    .sort((a, b) => a.ruling - b.ruling || a.area - b.area);
}
