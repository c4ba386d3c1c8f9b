import { defaultForceModel, defaultRunOptions } from '../core/dynamics/index.ts';
import type { RunOptions, SpeedOrder } from '../core/dynamics/types.ts';
import type { Structure, Surroundings } from '../core/risks/types.ts';
import type { Train } from '../core/stock/types.ts';
import { reverseTrack } from '../core/track/index.ts';
import {
  cornersOf,
  leadingEnds,
  type Scene,
  type SceneOrder,
  type SceneTrial,
  trainLength,
  trainPlaces,
  trialDefaults,
  vehicleOf,
} from '../scene/index.ts';
import { compileLineside } from './compileLineside.ts';
import { isPropelled, runningOrder } from './formation.ts';
import type { CompiledScene, CompiledTrial } from './types.ts';

const mm = 1e-3;

/** One trial of a scene in SI, vehicle 0 leading. Throws RangeError when the scene has no such trial, track or train. */
export function compileTrial(compiled: CompiledScene, trialId: string): CompiledTrial {
  const { scene } = compiled;
  const trial = found(scene.trials, trialId, 'trial');
  const file = found(scene.tracks, trial.track, 'track');
  const fileTrain = found(scene.trains, trial.train, 'train');
  const track = compiled.tracks.get(file.id);
  if (track === undefined) throw new RangeError(`Track "${file.id}" was not compiled.`);
  const places = trainPlaces(scene, fileTrain);
  const vehicles = runningOrder(places, trial.leading);
  const train: Train = { name: fileTrain.name, vehicles };
  const ends = leadingEnds(file, trainLength(places) / mm, trial);
  const reversed = !ends.forward;
  const alongPath = (chainageMm: number): number => (reversed ? track.length - chainageMm * mm : chainageMm * mm);
  return {
    id: trial.id,
    name: trial.name,
    trackId: file.id,
    trainId: fileTrain.id,
    path: { track: reversed ? reverseTrack(track) : track, reversed },
    train,
    script: {
      start: alongPath(ends.startMm),
      finish: alongPath(ends.finishMm),
      timeLimit: trial.timeLimitS,
      orders: trial.orders.map((order) => speedOrder(order, trial, places.length, alongPath)),
    },
    options: runOptions(trial),
    propelled: isPropelled(vehicles),
    lastLeads: trial.leading === 'last',
    surroundings: surroundingsOf(compiled, trial),
  };
}

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

function runOptions(trial: SceneTrial): RunOptions {
  return {
    ...defaultRunOptions,
    forces: { ...defaultForceModel, ...trial.forces },
    ...(trial.stepMs === undefined ? {} : { step: trial.stepMs * mm }),
    ...(trial.frameMs === undefined ? {} : { frameInterval: trial.frameMs * mm }),
  };
}

/** What stands in the room by corners and heights, and what stands along a track. */
function structuresOf(scene: Scene, tracks: CompiledScene['tracks']): Structure[] {
  const placed = (scene.structures ?? []).map((one) => ({
    name: one.name,
    outline: cornersOf(one).map(({ xMm, yMm }) => [xMm * mm, yMm * mm] as const),
    bottom: one.bottomMm * mm,
    top: one.topMm * mm,
  }));
  const along = (scene.lineside ?? []).flatMap((one) => {
    const track = tracks.get(one.track);
    return track === undefined ? [] : compileLineside(one, track);
  });
  return [...placed, ...along];
}

function surroundingsOf({ scene, tracks }: CompiledScene, { passers }: SceneTrial): Surroundings {
  const structures = structuresOf(scene, tracks);
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
