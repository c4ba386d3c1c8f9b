import { type Greatest, greatestWhole, type StudyHooks } from '../../core/study/index.ts';
import {
  parseScene,
  type Scene,
  type SceneTrain,
  type SceneTrial,
  trainLength,
  trainPlaces,
  trialsTogether,
  vehicleOf,
  wayLengthMm,
  wayOf,
} from '../../scene/index.ts';
import { type Gauge, passesBy } from './gauges.ts';
import type { ProbeBy } from './sweep.ts';
import type { Exactness, Probe } from './types.ts';

/** What a table of loads is made of: ids of engines and of kinds of vehicle under "stock", and of trials that say where and how. */
export interface LoadSpec {
  readonly trialIds: readonly string[];
  readonly engines: readonly string[];
  readonly kinds: readonly string[];
  /** Most vehicles asked about. */
  readonly most: number;
  /** 'stall' asks what an engine can haul, 'all' what comes through with every risk passed. */
  readonly gauge: Gauge;
}

/** The greatest load of one kind that one engine takes through one trial. */
export interface Load extends Greatest {
  readonly trialId: string;
  readonly engine: string;
  readonly kind: string;
  /** Mass of the vehicles that pass, without the engine, kg. */
  readonly mass: number;
  /** What became of the first number that fails, in full; null where none does. */
  readonly failing: Probe | null;
}

/**
 * The greatest number of alike vehicles that each engine takes through each trial: halved by the quasi-static pass, confirmed by full runs (the number passes, one more
 * fails). The trial's train is replaced; the engine, with its tender where a train has it with one, stands at the end where its engine stood, and orders
 * to single vehicles go to the engine. A train that does not fit between the start and the finish fails, and says so. Throws RangeError for ids that are not there.
 */
export async function loadTable(
  scene: Scene,
  spec: LoadSpec,
  probe: ProbeBy,
  hooks: StudyHooks = {},
): Promise<{ readonly loads: readonly Load[]; readonly whole: boolean }> {
  const asked = spec.trialIds.flatMap((trialId) =>
    spec.engines.flatMap((engine) => spec.kinds.map((kind) => ({ trialId, engine, kind }))),
  );
  for (const one of asked) loadedScene(scene, one.trialId, one.engine, one.kind, 0);
  const loads: Load[] = [];
  for (const { trialId, engine, kind } of asked) {
    if (hooks.stopped?.() ?? false) break;
    let failing: { readonly count: number; readonly probe: Probe } | null = null;
    const ask = async (count: number, exactness: Exactness): Promise<boolean> => {
      const loaded = loadedScene(scene, trialId, engine, kind, count);
      const outcome: Probe = loaded.ok
        ? await probe({ scene: loaded.scene, settings: [], trialIds: [trialId], exactness })
        : loaded;
      const passes = arrives(outcome) && passesBy(spec.gauge)(outcome);
      if (!passes && exactness === 'run') failing = { count, probe: outcome };
      return passes;
    };
    const greatest = await greatestWhole(
      spec.most,
      (count) => ask(count, 'steady'),
      (count) => ask(count, 'run'),
      hooks,
    );
    const stopper = failing as { readonly count: number; readonly probe: Probe } | null;
    loads.push({
      trialId,
      engine,
      kind,
      ...greatest,
      mass: Math.max(0, greatest.passes) * massOf(scene, kind),
      failing: stopper !== null && stopper.count === greatest.fails ? stopper.probe : null,
    });
    hooks.onProgress?.(loads.length, asked.length);
  }
  return { loads, whole: loads.length === asked.length && loads.every(({ whole }) => whole) };
}

/** Of one vehicle of a kind, kg. */
function massOf(scene: Scene, kind: string): number {
  const found = scene.stock.find(({ id }) => id === kind);
  return found === undefined ? Number.NaN : vehicleOf(scene, found).mass;
}

/** A gauge of one risk says nothing of a train that did not get there for another reason; a load has to. */
const arrives = (probe: Probe): boolean => probe.ok && probe.trials.every(({ outcome }) => outcome === 'arrived');

type Loaded = { readonly ok: true; readonly scene: Scene } | { readonly ok: false; readonly reason: string };

/** The scene with a trial's train made of an engine and so many vehicles of one kind. */
export function loadedScene(scene: Scene, trialId: string, engine: string, kind: string, count: number): Loaded {
  const trial = scene.trials.find(({ id }) => id === trialId);
  const train = scene.trains.find(({ id }) => id === trial?.train);
  if (trial === undefined || train === undefined) throw new RangeError(`The scene has no trial "${trialId}".`);
  const stock = (id: string) => {
    const found = scene.stock.find((one) => one.id === id);
    if (found === undefined) throw new RangeError(`The scene has no vehicle "${id}".`);
    return found;
  };
  if (stock(engine).drive === undefined) throw new RangeError(`"${engine}" has no drive.`);
  stock(kind);
  const places = trainPlaces(scene, train);
  const old = places.findIndex(({ vehicle }) => vehicle.drive !== null);
  const engineFirst = old < 0 || old < places.length / 2;
  const unit = engineUnit(scene, engine, engineFirst, old >= 0 && places[old].turned);
  const load = count === 0 ? [] : [{ stock: kind, ...(count === 1 ? {} : { count }) }];
  const loaded: SceneTrain = {
    ...train,
    id: loadId(scene),
    vehicles: engineFirst ? [...unit, ...load] : [...load, ...unit],
  };
  const place = 1 + unit.findIndex((one) => one.stock === engine) + (engineFirst ? 0 : count);
  // Trials that go on from each other have one train.
  const together = trialsTogether(scene, trialId);
  const fitted = (one: SceneTrial): SceneTrial => {
    const orders = one.orders.map(({ vehicle, ...order }) =>
      vehicle === undefined ? order : { ...order, vehicle: place },
    );
    const { startMm: _start, ...withoutStart } = one;
    return { ...(fits(scene, one, loaded) ? one : withoutStart), train: loaded.id, orders };
  };
  const parsed = parseScene({
    ...scene,
    trains: [...scene.trains, loaded],
    trials: scene.trials.map((one) => (together.has(one.id) ? fitted(one) : one)),
    variants: [],
    surveys: [],
    tour: [],
  });
  if (parsed.ok) return parsed;
  const [{ path, found, allowed }] = parsed.problems;
  return { ok: false, reason: `${path}: ${found}; allowed: ${allowed}` };
}

/** Whether a train behind its leading end at the trial's own start is still on the track. */
function fits(scene: Scene, trial: SceneTrial, train: SceneTrain): boolean {
  if (trial.startMm === undefined) return true;
  const lengthMm = trainLength(trainPlaces(scene, train)) * 1e3;
  if (trial.towards !== 'start') return trial.startMm >= lengthMm;
  const way = wayOf(scene, trial);
  return way === null || trial.startMm + lengthMm <= wayLengthMm(way);
}

/** An id that no train has. */
function loadId(scene: Scene): string {
  let id = 'load';
  while (scene.trains.some((train) => train.id === id)) id = `${id}-`;
  return id;
}

type TrainEntry = SceneTrain['vehicles'][number];

/**
 * An engine with the tenders that stand next to it in the first train that has it, as they are to stand at the head of a train, or at its end. One without
 * a tender faces as `turned` says.
 */
function engineUnit(scene: Scene, engine: string, first: boolean, turned: boolean): TrainEntry[] {
  const isTender = (entry: TrainEntry | undefined): boolean =>
    entry !== undefined && scene.stock.find(({ id }) => id === entry.stock)?.kind === 'tender';
  for (const { vehicles } of scene.trains) {
    const at = vehicles.findIndex(({ stock }) => stock === engine);
    if (at < 0) continue;
    let [from, to] = [at, at];
    while (isTender(vehicles[to + 1])) to++;
    if (to === at) while (isTender(vehicles[from - 1])) from--;
    if (from === to) continue;
    const unit = vehicles.slice(from, to + 1);
    // The engine leads its tender at the head of a train, and follows it at the end.
    return to > at === first ? unit : unit.map(aboutFace).reverse();
  }
  return [{ stock: engine, ...(turned ? { turned } : {}) }];
}

const aboutFace = ({ turned, ...entry }: TrainEntry): TrainEntry => (turned ? entry : { ...entry, turned: true });
