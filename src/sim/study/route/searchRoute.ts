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
import type { ProbeBy } from '../sweep.ts';
import { chosenOf, finalistsOf, marginOf, measuredPresent, runFinals, runTrials } from './finals.ts';
import { groundOf, layRoute } from './layRoute.ts';
import { createTally } from './tally.ts';
import type { RouteAnswer, RouteCertainty, RouteFound, RouteHooks, RouteLooked, RouteQuestion } from './types.ts';
import { valuesOf, wishes } from './wishes.ts';

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
  const kept = new Map<string, RouteLooked>();
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
      if (laid.missed > 0) tally.missed(route.misses, route.conflicts);
      else if (aim !== 'grade') {
        const probe = await runTrials(tools.probe, question, route, 'steady');
        if (!probe.ok) {
          tally.cannot(at.join(), probe.reason);
          return { values: wishes[aim].map(() => 0), missed: Number.POSITIVE_INFINITY };
        }
        route = { ...route, quickMargin: marginOf(probe, question) };
      }
      if (laid.missed === 0) {
        best.set(at.join(), route);
        kept.set(at.join(), lookedOf(route));
      }
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
  const routes = await runFinals(ground, finals, tools.probe, hooks, seen.size, best);
  const present = await measuredPresent(ground, tools.probe, stopped);
  return {
    present,
    routes: chosenOf(question, routes),
    certainty,
    inFull: trialIds.length > 0 && routes.filter(({ probe }) => probe !== null).length === kept.size,
    looked: [...kept.entries()].sort(byRuling).map(([, one]) => one),
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

const lookedOf = ({ values, settings, ruling, across, along, area, quickMargin }: RouteFound): RouteLooked => ({
  ...{ values, settings, ruling, across, along, area, quickMargin },
});

/** Of as much grade by their places, so that the order does not hang on which was ready first. */
const byRuling = ([a, one]: [string, RouteLooked], [b, other]: [string, RouteLooked]): number =>
  one.ruling - other.ruling || (a < b ? -1 : 1);
