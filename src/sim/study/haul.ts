import { forceDefaults, steadyRun } from '../../core/dynamics/index.ts';
import { pullReserve } from '../../core/findings/index.ts';
import { pullOf } from '../../core/risks/index.ts';
import { removeEntry, type Scene, type SceneTrial, setEntry, trainPlaces } from '../../scene/index.ts';
import { compileScene } from '../compileScene.ts';
import { compileTrial } from '../compileTrial.ts';
import { riskContext } from '../runTrial.ts';
import { routeMeasure } from './routeMeasure.ts';

/** What is counted against the engines: first as rules of thumb have it, at a crawl and without flange friction; 'trial' is all of it, as the trial is driven. */
export type HaulCase = 'grade' | 'rolling' | 'curves-low' | 'curves-high' | 'trial';

/** How many vehicles of one kind a train takes along, whatever else is in it. */
export interface Haul {
  readonly counts: HaulCase;
  /** With the part of a vehicle that there would be pull for, never less than 0; null: nothing holds the train back. */
  readonly vehicles: number | null;
  /** Where it decides, track chainage, m. */
  readonly chainage: number;
  /** False: more than these do not fit on the track, so that nothing is known of them. */
  readonly fits: boolean;
}

export interface HaulTable {
  readonly trialId: string;
  /** Id of the kind under "stock" that is counted. */
  readonly kind: string;
  /** Tightest curve of the way, m; null: none to speak of. */
  readonly radius: number | null;
  /** Curve drag there as a share of weight, at its least and at its most. */
  readonly curveLow: number;
  readonly curveHigh: number;
  readonly hauls: readonly Haul[];
  /** Whole vehicles that get over with what a verdict wants in hand besides, see `pullReserve`; null: any number. */
  readonly surely: number | null;
}

/** Curves of more than this are no curves, m: nobody lays one at home. */
const almostStraight = 20;

/** Way between the places looked at, m: a small part of any vehicle. */
const stationEvery = 0.02;

/** Rounds of closing in; the need grows almost evenly with the vehicles, so two or three do where the track is long enough. */
const rounds = 12;

/**
 * How many vehicles of the kind that a trial's train has most of its engines take along: where the need, by the quasi-static pass, is all that they can give. Every
 * other vehicle stays. First by what each rule of thumb counts, then as the trial has it. Throws RangeError where there is nothing to pull or nothing that pulls.
 */
export function haulTable(scene: Scene, trialId: string): HaulTable {
  const trial = scene.trials.find(({ id }) => id === trialId);
  const train = scene.trains.find(({ id }) => id === trial?.train);
  if (trial === undefined || train === undefined) throw new RangeError(`The scene has no trial "${trialId}".`);
  const places = trainPlaces(scene, train);
  if (places.every(({ vehicle }) => vehicle.drive === null)) throw new RangeError(`${train.name} has no engine.`);
  const drawn = places.flatMap(({ entry, vehicle }) => (vehicle.drive === null ? [train.vehicles[entry].stock] : []));
  const kind = commonest(drawn);
  if (kind === null) throw new RangeError(`${train.name} has nothing behind its engine.`);
  const { track } = compileTrial(compileScene(scene), trialId).path;
  const { tightest } = routeMeasure(track);
  const radius = tightest < almostStraight ? tightest : null;
  const cases: readonly HaulCase[] = [
    'grade',
    'rolling',
    ...(radius === null ? [] : (['curves-low', 'curves-high'] as const)),
    'trial',
  ];
  const hauls = cases.map((counts): Haul => {
    const counted = countedScene(scene, trial, counts);
    return { counts, ...closeIn((count) => needOf(counted, trialId, train.id, kind, count)) };
  });
  const bend = radius === null ? 0 : 1 / radius;
  const last = hauls[hauls.length - 1];
  return {
    trialId,
    kind,
    radius,
    curveLow: forceDefaults.curveLowShare.value,
    curveHigh: (forceDefaults.curveHighFactor.value * scene.scale.gaugeMm * bend) / 1000,
    hauls,
    surely:
      last.vehicles === null ? null : surely(last.vehicles, (count) => needOf(scene, trialId, train.id, kind, count)),
  };
}

/** The most whole vehicles, no more than `most`, that leave the reserve in hand. */
function surely(most: number, need: (count: number) => Need | null): number {
  let count = Math.floor(most);
  while (count > 0 && (need(count)?.share ?? 1) * (1 + pullReserve) > 1) count--;
  return count;
}

/** What a train needs at its worst place as a share of what its engines can give there; 0: nothing. */
interface Need {
  readonly share: number;
  readonly chainage: number;
}

/** Null: so many do not fit on the track. */
function needOf(scene: Scene, trialId: string, trainId: string, kind: string, count: number): Need | null {
  try {
    const trial = compileTrial(compileScene(withCount(scene, trainId, kind, count)), trialId);
    const { path, train, script, options } = trial;
    const setting = script.orders.reduce((most, order) => Math.max(most, Math.abs(order.setting)), 0);
    const run = steadyRun({ path, train, script, options }, { every: stationEvery, setting });
    const pull = pullOf(riskContext(trial, run));
    let worst: Need = { share: 0, chainage: 0 };
    for (let frame = 0; frame < run.frames; frame++) {
      pull.at(frame);
      const share = pull.needed / pull.available;
      if (share > worst.share) worst = { share, chainage: run.chainage[frame * run.vehicles] };
    }
    return { ...worst, chainage: path.reversed ? path.track.length - worst.chainage : worst.chainage };
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The number of vehicles, with its part of one, whose need is just what there is. */
function closeIn(need: (count: number) => Need | null): Omit<Haul, 'counts'> {
  let low = 1;
  let fitting = { vehicles: 0, chainage: 0, fits: false };
  let tooMany = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const a = need(low);
    const b = a && need(low + 1);
    if (a === null || b === null) {
      tooMany = low + (a === null ? 0 : 1);
      if (a !== null) fitting = { vehicles: Math.max(fitting.vehicles, low), chainage: a.chainage, fits: false };
      if (tooMany - fitting.vehicles <= 1) return fitting;
      low = Math.floor((fitting.vehicles + tooMany) / 2);
      continue;
    }
    fitting = { vehicles: low + 1, chainage: b.chainage, fits: false };
    const more = b.share - a.share;
    if (!(more > 0)) return { vehicles: null, chainage: b.chainage, fits: true };
    const vehicles = Math.max(0, low + (1 - a.share) / more);
    const next = Math.min(Math.max(1, Math.floor(vehicles)), tooMany - 2);
    if (next === low) return vehicles < tooMany ? { vehicles, chainage: b.chainage, fits: true } : fitting;
    low = next;
  }
  return fitting;
}

/** The scene with only those losses in it that a case counts. */
function countedScene(scene: Scene, trial: SceneTrial, counts: HaulCase): Scene {
  if (counts === 'trial') return scene;
  const curves = counts === 'curves-low' ? 'low' : counts === 'curves-high' ? 'high' : null;
  const drag: SceneTrial['forces'] = curves === null ? { curveFactor: 0 } : { curveDrag: curves, curveFactor: 1 };
  return {
    ...scene,
    stock: scene.stock.map((one) => ({
      ...one,
      rollingPercentPerMPerS: 0,
      ...(counts === 'grade' && { rollingPercent: 0 }),
    })),
    trials: scene.trials.map((one) =>
      one === trial ? { ...one, forces: { ...one.forces, ...drag, flangeFriction: 0 } } : one,
    ),
  };
}

/** The scene with so many vehicles of a kind in a train, all where the first of them stands. Throws RangeError where they do not fit. */
function withCount(scene: Scene, trainId: string, kind: string, count: number): Scene {
  const entries = (now: Scene) => now.trains.find(({ id }) => id === trainId)?.vehicles ?? [];
  const first = entries(scene).findIndex(({ stock }) => stock === kind);
  let made = scene;
  for (let index = entries(scene).length - 1; index > first; index--) {
    if (entries(made)[index].stock === kind) made = removeEntry(made, trainId, index);
  }
  return setEntry(made, trainId, first, { count });
}

/** What a list names most often, the first of those that share the honour; null for an empty one. */
function commonest(names: readonly string[]): string | null {
  const count = (name: string) => names.filter((one) => one === name).length;
  return names.reduce<string | null>((best, name) => (best === null || count(name) > count(best) ? name : best), null);
}
