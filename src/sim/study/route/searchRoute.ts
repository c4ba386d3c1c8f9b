import type { Wish } from '../../../core/study/index.ts';
import { createProbing } from '../../../core/study/probing.ts';
import {
  allPlaces,
  divideBoxes,
  mostNumbers,
  numbersAt,
  searchFront,
  settingsOf,
  unbeatenOf,
  type Weigh,
  type Weighed,
  type Worth,
} from '../../../core/study/search/index.ts';
import { nextTurn } from '../../runTrial.ts';
import type { Solver } from '../../survey/solver.ts';
import { closestCall } from '../gauges.ts';
import type { ProbeBy } from '../sweep.ts';
import type { Exactness, Probe } from '../types.ts';
import { groundOf, layPresent, layRoute, type RouteGround } from './layRoute.ts';
import type {
  RouteAim,
  RouteAnswer,
  RouteCertainty,
  RouteFound,
  RouteHooks,
  RouteMiss,
  RouteQuestion,
} from './types.ts';

/** Routes run in full at the end: the best by the quasi-static pass, so that its order may prove wrong by a few; of a front as many as one can look through. */
const finalists = { grade: 1, margin: 5, front: 16 } as const satisfies Readonly<Record<RouteAim, number>>;

/** What is wished of every aim: ruling grade in per cent, area in m², margin as a share. */
const wishes = {
  grade: ['least'],
  margin: ['most'],
  front: ['least', 'least', 'most'],
} as const satisfies Readonly<Record<RouteAim, readonly Wish[]>>;

/** Values are told apart to this: a thousandth of a per cent, 10 cm², a thousandth of a margin. Finer ones would make a front of rounding. */
const grains = 1e3;
const grained = (value: number): number => Math.round(value * grains) / grains;

/** A margin where nothing can happen at all, as a share. */
const nothingCanHappen = 10;

/**
 * Chooses numbers of a scene so that a route is best: every setting where there are few enough, else by dividing boxes over the whole ranges and looking around
 * the best found. Candidates go through the quasi-static pass, those that come out best through full runs. `probe` runs trials (this thread, a worker, a pool; `hooks.width` of them at once); `solver` is needed where
 * heights are to be found. The same question gives the same answer whatever runs it. Stopped, it gives what was found until then. Rejects with a RangeError, in words, for a
 * question that says nothing.
 */
export async function searchRoute(
  question: RouteQuestion,
  tools: { readonly probe: ProbeBy; readonly solver: Solver | null },
  hooks: RouteHooks = {},
): Promise<RouteAnswer> {
  const { numbers, aim, probes, trialIds } = question;
  checkQuestion(question);
  const settings = settingsOf(numbers);
  const ground = groundOf(question, tools.solver);
  const count = settings.reduce((product, one) => product * one, 1);
  const most = Math.min(count, probes);
  const stopped = (): boolean => hooks.stopped?.() ?? false;
  const seen = new Map<string, Weighed>();
  const tally = createTally();
  const told = new Set<string>();
  let best = new Map<string, RouteFound>();

  const probing = createProbing<Worth>(
    async (at) => {
      await nextTurn({}, 0);
      const laid = layRoute(ground, numbersAt(numbers, at));
      if (!laid.ok) {
        tally.cannot(at.join(), laid.reason);
        return { values: wishes[aim].map(() => 0), missed: Number.POSITIVE_INFINITY };
      }
      let { route } = laid;
      if (laid.missed > 0) tally.missed(route.misses);
      else if (aim !== 'grade') {
        const probe = await runTrials(tools.probe, question, route, 'steady');
        if (!probe.ok) {
          tally.cannot(at.join(), probe.reason);
          return { values: wishes[aim].map(() => 0), missed: Number.POSITIVE_INFINITY };
        }
        route = { ...route, quickMargin: marginOf(probe, question) };
      }
      if (laid.missed === 0) best.set(at.join(), route);
      return { values: valuesOf(aim, route), missed: laid.missed };
    },
    { ...hooks, onProgress: (done) => hooks.onProgress?.(done, Math.max(done, most)) },
  );

  const weigh: Weigh = async (places) => {
    const worths = await probing.at(places);
    places.forEach((at, k) => {
      const worth = worths[k];
      if (worth !== null) seen.set(at.join(), { at, worth });
    });
    // Only what may still be told is kept: a railway each.
    const front = unbeatenOf([...seen.values()], wishes[aim]);
    const keys = front.map(({ at }) => at.join());
    const news = keys.some((key) => !told.has(key));
    best = new Map([...best].filter(([key]) => keys.includes(key)));
    if (news) {
      for (const key of keys) told.add(key);
      hooks.onFound?.(keys.flatMap((key) => best.get(key) ?? []));
    }
    return worths;
  };
  const certainty = await look({ question, settings, count, seen, weigh, stopped });
  const finals = finalistsOf(aim, [...seen.values()]);
  const routes = await runFinals(ground, finals, tools.probe, hooks, seen.size);
  const present = await measuredPresent(ground, tools.probe, stopped);
  return {
    present,
    routes: chosenOf(question, routes),
    certainty,
    settings: count,
    probes: seen.size,
    ...tally.told(seen.keys()),
    whole: !stopped() && (trialIds.length === 0 || routes.every(({ probe }) => probe !== null)),
  };
}

interface Looking {
  readonly question: RouteQuestion;
  readonly settings: readonly number[];
  readonly count: number;
  readonly seen: ReadonlyMap<string, Weighed>;
  readonly weigh: Weigh;
  readonly stopped: () => boolean;
}

/** Half of the railways are for looking everywhere, in turn for every wish, the rest for looking around the best. */
async function look({ question, settings, count, seen, weigh, stopped }: Looking): Promise<RouteCertainty> {
  const { aim, probes } = question;
  if (count <= probes) {
    await weigh(allPlaces(settings));
    return stopped() ? 'best-found' : 'every-setting';
  }
  for (const [value, wish] of wishes[aim].entries()) {
    const share = Math.ceil((probes * (value + 1)) / (2 * wishes[aim].length));
    // Its own count begins at nothing: places that another wish has had weighed cost nothing.
    await divideBoxes({ settings, value, wish, probes: share }, weigh, () => stopped() || seen.size >= share);
  }
  const spec = { settings, wishes: wishes[aim], probes: probes - seen.size };
  const { settled } = await searchFront(spec, [...seen.values()], weigh, stopped);
  return settled && !stopped() ? 'no-better-neighbour' : 'best-found';
}

function checkQuestion({ numbers, solved, probes, limits, aim, trialIds }: RouteQuestion): void {
  if (numbers.length < 1 || numbers.length > mostNumbers) {
    throw new RangeError(`One to ${mostNumbers} numbers can be chosen at once, not ${numbers.length}.`);
  }
  const all = [...numbers.map(({ at }) => at), ...solved];
  const twice = all.find((at, k) => all.indexOf(at) !== k);
  if (twice !== undefined) throw new RangeError(`"${twice}" stands there twice.`);
  if (solved.length > 3) throw new RangeError('Three numbers close any end: a place has two, and a direction.');
  if (!(Number.isInteger(probes) && probes >= 1)) {
    throw new RangeError(`The number of railways to look at is a whole number from 1, not ${probes}.`);
  }
  const bad = Object.entries(limits).find(([, limit]) => typeof limit === 'number' && !(limit > 0));
  if (bad !== undefined) throw new RangeError(`A limit is above 0, not ${bad[1]}.`);
  if (aim !== 'grade' && trialIds.length === 0) throw new RangeError('A margin needs trials to be run.');
}

function valuesOf(aim: RouteAim, { ruling, area, quickMargin }: RouteFound): number[] {
  const all = { grade: grained(ruling * 100), area: grained(area), margin: grained(quickMargin ?? 0) };
  if (aim === 'grade') return [all.grade];
  return aim === 'margin' ? [all.margin] : [all.grade, all.area, all.margin];
}

const runTrials = (probe: ProbeBy, { trialIds }: RouteQuestion, { scene }: RouteFound, exactness: Exactness) =>
  probe({ scene, settings: [], trialIds, exactness });

/** Smallest margin as a share; a train that does not arrive has none. */
function marginOf(probe: Probe, { gauge }: RouteQuestion): number | null {
  if (!probe.ok) return null;
  const share = closestCall(probe, gauge)?.share ?? nothingCanHappen;
  return probe.trials.every(({ outcome }) => outcome === 'arrived') ? share : Math.min(share, 0);
}

/** Places that are run in full: the best few of a single aim; of a front those spread over it, the ends of each wish among them. */
function finalistsOf(aim: RouteAim, seen: readonly Weighed[]): Weighed[] {
  if (aim !== 'front') {
    const sign = wishes[aim][0] === 'least' ? 1 : -1;
    const kept = seen.filter(({ worth }) => worth.missed === 0);
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
async function runFinals(
  ground: RouteGround,
  finals: readonly Weighed[],
  probe: ProbeBy,
  hooks: RouteHooks,
  done: number,
): Promise<RouteFound[]> {
  const { question } = ground;
  const routes = finals.flatMap(({ at, worth }) => {
    const laid = layRoute(ground, numbersAt(question.numbers, at), true);
    const quickMargin = question.aim === 'grade' ? null : worth.values[worth.values.length - 1];
    return laid.ok ? [{ ...laid.route, quickMargin }] : [];
  });
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
  return { ...route, quickMargin: marginOf(quick, question), margin: marginOf(full, question), probe: full };
}

async function measuredPresent(
  ground: RouteGround,
  probe: ProbeBy,
  stopped: () => boolean,
): Promise<RouteFound | null> {
  const laid = layPresent(ground);
  if (!laid.ok) return null;
  return stopped() || ground.question.trialIds.length === 0 ? laid.route : inFull(ground.question, laid.route, probe);
}

/** What is answered: by full runs where they were made, by the quasi-static pass where not. */
function chosenOf({ aim }: RouteQuestion, routes: readonly RouteFound[]): RouteFound[] {
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

/** Counts what stood in the way, whichever candidate was ready first. */
function createTally() {
  const times = new Map<RouteMiss | 'cannot-be-laid', number>();
  const reasons = new Map<string, string>();
  const add = (miss: RouteMiss | 'cannot-be-laid') => times.set(miss, (times.get(miss) ?? 0) + 1);
  return {
    cannot(place: string, why: string): void {
      reasons.set(place, why);
      add('cannot-be-laid');
    },
    missed(misses: readonly RouteMiss[]): void {
      for (const miss of new Set(misses)) add(miss);
    },
    told: (places: Iterable<string>): Pick<RouteAnswer, 'inTheWay' | 'reason'> => ({
      inTheWay: [...times]
        .map(([miss, count]) => ({ miss, times: count }))
        .sort((a, b) => b.times - a.times || (a.miss < b.miss ? -1 : 1)),
      reason: [...places].map((place) => reasons.get(place)).find((why) => why !== undefined) ?? null,
    }),
  };
}
