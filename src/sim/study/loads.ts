import { type Greatest, greatestWhole, type StudyHooks } from '../../core/study/index.ts';
import {
  parseScene,
  type Scene,
  type SceneTrain,
  type SceneTrial,
  trainLength,
  trainPlaces,
  trialsTogether,
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
 * fails). The trial's train is replaced; the engine stands at the end where its engine stood, and orders to single vehicles go to the
 * engine. A train that does not fit between the start and the finish fails, and says so. Throws RangeError for ids that are not there.
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
      mass: Math.max(0, greatest.passes) * massOf(scene, trialId, engine, kind),
      failing: stopper !== null && stopper.count === greatest.fails ? stopper.probe : null,
    });
    hooks.onProgress?.(loads.length, asked.length);
  }
  return { loads, whole: loads.length === asked.length && loads.every(({ whole }) => whole) };
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
  const turned = old >= 0 && places[old].turned;
  const own = { stock: engine, ...(turned ? { turned } : {}) };
  const load = count === 0 ? [] : [{ stock: kind, ...(count === 1 ? {} : { count }) }];
  const loaded: SceneTrain = { ...train, id: loadId(scene), vehicles: engineFirst ? [own, ...load] : [...load, own] };
  // Trials that go on from each other have one train.
  const together = trialsTogether(scene, trialId);
  const fitted = (one: SceneTrial): SceneTrial => {
    const orders = one.orders.map(({ vehicle, ...order }) =>
      vehicle === undefined ? order : { ...order, vehicle: engineFirst ? 1 : count + 1 },
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

function massOf(scene: Scene, trialId: string, engine: string, kind: string): number {
  const loaded = loadedScene(scene, trialId, engine, kind, 1);
  if (!loaded.ok) return Number.NaN;
  const trial = loaded.scene.trials.find(({ id }) => id === trialId);
  const train = loaded.scene.trains.find(({ id }) => id === trial?.train);
  const places = train === undefined ? [] : trainPlaces(loaded.scene, train);
  return places.reduce((sum, { vehicle }) => sum + (vehicle.drive === null ? vehicle.mass : 0), 0);
}
