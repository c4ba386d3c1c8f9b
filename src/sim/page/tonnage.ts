import type { Scene, SceneTrial } from '../../scene/index.ts';
import { driveDefaults } from '../../scene/index.ts';
import { compileScene } from '../compileScene.ts';
import { compileTrial } from '../compileTrial.ts';
import { loadTable } from '../study/loads.ts';
import type { SimHost } from '../types.ts';
import { climbOf } from './everyWorking.ts';
import type { PageHooks } from './pageTrials.ts';
import { type RailState, railStates, type Tonnage, type TonnageRow } from './types.ts';

/** Most vehicles a rating asks about: longer trains than these are not run at home. */
const most = 40;

/** Kinds of vehicle that a rating is given in at most, the commonest in the trains first. */
const mostKinds = 4;

/** Where in the band of curve drag each state of the rails stands, and what the wheels grip with where an engine says nothing of its own. */
const taken: Tonnage['taken'] = {
  clean: { adhesion: driveDefaults.adhesion.high, curveDrag: 'low' },
  average: { adhesion: driveDefaults.adhesion.value, curveDrag: 'nominal' },
  dirty: { adhesion: driveDefaults.adhesion.low, curveDrag: 'high' },
};

/**
 * The greatest load of each engine up each track, in each of the commonest kinds of vehicle, on clean, average and dirty rails, by pull alone: halved by the
 * quasi-static pass, confirmed by full runs. `scene` has a pulled trial up every track (see `withEveryWorking`). Null where nothing pulls or
 * nothing climbs. Called off, it gives the rows that are done.
 */
export async function tonnage(scene: Scene, host: SimHost, hooks: PageHooks = {}): Promise<Tonnage | null> {
  const engines = scene.stock.filter(({ drive }) => drive !== undefined);
  const kinds = commonest(scene);
  const climbs = climbing(scene);
  if (engines.length === 0 || kinds.length === 0 || climbs.length === 0) return null;
  const asks = climbs.flatMap((trial) => engines.flatMap((engine) => kinds.map((kind) => ({ trial, engine, kind }))));
  const scenes = Object.fromEntries(railStates.map((state) => [state, onRails(scene, state)])) as Record<
    RailState,
    Scene
  >;
  const rows: TonnageRow[] = [];
  for (const [index, { trial, engine, kind }] of asks.entries()) {
    const loads: Partial<Record<RailState, TonnageRow['loads'][RailState]>> = {};
    for (const [at, state] of railStates.entries()) {
      if (hooks.signal?.aborted) return { rows, taken };
      const table = await loadTable(
        scenes[state],
        { trialIds: [trial.id], engines: [engine.id], kinds: [kind.id], most, gauge: 'stall' },
        (request) => host.probe({ ...request, withoutTakes: true }),
        { stopped: () => hooks.signal?.aborted ?? false },
      );
      const [load] = table.loads;
      if (!table.whole || load === undefined) return { rows, taken };
      loads[state] = { vehicles: load.passes, mass: load.mass, all: load.failing === null };
      hooks.onProgress?.((index + (at + 1) / railStates.length) / asks.length);
    }
    rows.push({
      engine: engine.name,
      kind: kind.name,
      track: scene.tracks.find(({ id }) => id === trial.track)?.name ?? '',
      loads: loads as TonnageRow['loads'],
    });
  }
  return { rows, taken };
}

/** One pulled trial up each track that has one. */
function climbing(scene: Scene): SceneTrial[] {
  const compiled = compileScene(scene);
  const found = new Map<string, SceneTrial>();
  for (const trial of scene.trials) {
    if (trial.track === undefined || trial.follows !== undefined || found.has(trial.track)) continue;
    const one = compileTrial(compiled, trial.id);
    if (!one.propelled && climbOf(one) > 0) found.set(trial.track, trial);
  }
  return [...found.values()];
}

/** Kinds of vehicle without a drive, those that stand in the trains most often first. */
function commonest({ stock, trains }: Scene) {
  const times = new Map<string, number>();
  for (const { vehicles } of trains) {
    for (const { stock: id, count = 1 } of vehicles) times.set(id, (times.get(id) ?? 0) + count);
  }
  return stock
    .filter(({ id, drive, kind }) => drive === undefined && kind !== 'tender' && times.has(id))
    .sort((a, b) => (times.get(b.id) ?? 0) - (times.get(a.id) ?? 0))
    .slice(0, mostKinds);
}

/** The scene on rails of a state: what was measured and written down stays as it is. */
function onRails(scene: Scene, state: RailState): Scene {
  if (state === 'average') return scene;
  const { adhesion, curveDrag } = taken[state];
  return {
    ...scene,
    stock: scene.stock.map((vehicle) =>
      vehicle.drive === undefined || vehicle.drive.adhesion !== undefined
        ? vehicle
        : { ...vehicle, drive: { ...vehicle.drive, adhesion } },
    ),
    trials: scene.trials.map((trial) =>
      trial.forces?.curveDrag === undefined ? { ...trial, forces: { ...trial.forces, curveDrag } } : trial,
    ),
  };
}
