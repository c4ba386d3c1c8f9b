import { defaultForceModel, defaultRunOptions, usualStep } from '../core/dynamics/index.ts';
import type { PathLeg, RunOptions, SpeedOrder } from '../core/dynamics/types.ts';
import type { Surroundings } from '../core/risks/types.ts';
import type { Train } from '../core/stock/types.ts';
import {
  leadingEnds,
  type Scene,
  type SceneOrder,
  type SceneTrial,
  takingOver,
  trackIdsOf,
  trainLength,
  trainPlaces,
  trialDefaults,
  vehicleOf,
  wayLengthMm,
  wayOf,
} from '../scene/index.ts';
import { compilePath } from './compilePath.ts';
import { isPropelled, runningOrder } from './formation.ts';
import { structuresOf } from './structures.ts';
import type { CompiledScene, CompiledTrial, TrialLeg } from './types.ts';

const mm = 1e-3;

/**
 * One trial of a scene in SI, vehicle 0 leading. Throws RangeError when the scene has no such trial, track or train, its
 * route does not hang together, or it cannot go on from where another ends.
 */
export function compileTrial(compiled: CompiledScene, trialId: string): CompiledTrial {
  const { scene } = compiled;
  const trial = found(scene.trials, trialId, 'trial');
  const fileTrain = found(scene.trains, trial.train, 'train');
  const trackIds = trackIdsOf(trial).map((id) => found(scene.tracks, id, 'track').id);
  const { path, joints } = compilePath(compiled, trial);
  const places = trainPlaces(scene, fileTrain);
  const vehicles = runningOrder(places, trial.leading);
  const train: Train = { name: fileTrain.name, vehicles };
  const { length } = path.track;
  const way = wayOf(scene, trial) ?? [];
  const ends = leadingEnds(wayLengthMm(way), trainLength(places) / mm, trial);
  const startMm = takenOverMm(scene, trial) ?? ends.startMm;
  const alongPath = (chainageMm: number): number => (path.reversed ? length - chainageMm * mm : chainageMm * mm);
  return {
    id: trial.id,
    name: trial.name,
    trackId: trackIds[0],
    trainId: fileTrain.id,
    path,
    way,
    ...(trial.follows !== undefined && { follows: compileTrial(compiled, trial.follows) }),
    ...(path.legs && { legs: namedLegs(scene, trackIds, path.legs) }),
    ...(joints.length > 0 && { joints }),
    train,
    script: {
      start: alongPath(startMm),
      finish: alongPath(ends.finishMm),
      ...(trial.stopS !== undefined && { stop: trial.stopS }),
      timeLimit: trial.timeLimitS,
      orders: trial.orders.map((order) => speedOrder(order, trial, places.length, alongPath)),
    },
    options: runOptions(trial, train),
    propelled: isPropelled(vehicles),
    lastLeads: trial.leading === 'last',
    surroundings: surroundingsOf(compiled, trial),
  };
}

/** Where a trial that goes on from another begins, mm along its way, were that one to stop dead as it arrives; null: it begins by itself. */
function takenOverMm(scene: Scene, trial: SceneTrial): number | null {
  if (trial.follows === undefined) return null;
  const whose = `Trial "${trial.id}" goes on from "${trial.follows}"`;
  const taken = takingOver(scene, found(scene.trials, trial.follows, 'trial'), trial);
  if (taken === null) throw new RangeError(`${whose}, but where that one's train arrives is not on its way.`);
  if (taken.leading !== trial.leading) {
    throw new RangeError(`${whose}, where the train stands the other way round: let its end "${taken.leading}" lead.`);
  }
  return taken.startMm;
}

const namedLegs = (scene: Scene, trackIds: readonly string[], legs: readonly PathLeg[]): TrialLeg[] =>
  legs.map(({ from, to, start }, leg) => {
    const trackId = trackIds[leg];
    return { trackId, trackName: found(scene.tracks, trackId, 'track').name, from, to, start };
  });

function found<T extends { readonly id: string }>(list: readonly T[], id: string, what: string): T {
  const one = list.find((entry) => entry.id === id);
  if (one !== undefined) return one;
  throw new RangeError(`The scene has no ${what} "${id}"; it has ${list.map((entry) => `"${entry.id}"`).join(', ')}.`);
}

function speedOrder(
  order: SceneOrder,
  trial: SceneTrial,
  vehicles: number,
  alongPath: (chainageMm: number) => number,
): SpeedOrder {
  const when = order.atS !== undefined ? { time: order.atS } : { chainage: alongPath(order.atMm ?? 0) };
  const ramp = order.rampS ?? trialDefaults.rampS.value;
  const what = {
    setting: order.setting,
    ...(order.holdMmPerS === undefined ? {} : { hold: order.holdMmPerS * mm }),
    ramp,
  };
  if (order.vehicle === undefined) return { when, ...what };
  const vehicle = trial.leading === 'first' ? order.vehicle - 1 : vehicles - order.vehicle;
  return { when, ...what, vehicle };
}

function runOptions(trial: SceneTrial, train: Train): RunOptions {
  return {
    ...defaultRunOptions,
    forces: { ...defaultForceModel, ...trial.forces },
    step: trial.stepMs === undefined ? usualStep(train) : trial.stepMs * mm,
    ...(trial.frameMs === undefined ? {} : { frameInterval: trial.frameMs * mm }),
  };
}

function surroundingsOf({ scene, tracks }: CompiledScene, { passers }: SceneTrial): Surroundings {
  const structures = structuresOf({ scene, tracks });
  const { thicknessMm, underlayMm, trackMm, widthMm } = scene.deck;
  return {
    tracks: [...tracks.values()],
    deckDepth: (thicknessMm + underlayMm + trackMm) * mm,
    ...(widthMm === undefined ? {} : { deckHalfWidth: (widthMm / 2) * mm }),
    ...(structures.length === 0 ? {} : { structures }),
    ...(passers === undefined
      ? {}
      : { passers: passers.map((id) => vehicleOf(scene, found(scene.stock, id, 'vehicle'))) }),
  };
}
