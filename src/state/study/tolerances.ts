import type { Address, Scene, SceneTrack, SceneTrain, SceneTrial } from '../../scene/index.ts';
import { placedSupports, readAt, trainPlaces, wayOf } from '../../scene/index.ts';
import type { UncertainQuantity } from '../../sim/study/index.ts';
import type { ToleranceAsk } from './types.ts';

/** A number that may be off, and what people call it. */
export interface Uncertain extends UncertainQuantity {
  readonly words: string;
}

/**
 * What of these trials may be off and by how much: every coupling head by itself, every support under their tracks or routes, every vehicle's mass. The
 * scene that comes with it has its trains written out vehicle by vehicle, so that alike vehicles need not be off alike.
 */
export function uncertainOf(
  scene: Scene,
  trialIds: readonly string[],
  { heads, supportsMm, massPercent }: Omit<ToleranceAsk, 'draws'>,
): { readonly scene: Scene; readonly uncertain: readonly Uncertain[] } {
  const trials = scene.trials.filter(({ id }) => trialIds.includes(id));
  const trains = scene.trains.filter(({ id }) => trials.some(({ train }) => train === id));
  const written: Scene = {
    ...scene,
    trains: scene.trains.map((train) => (trains.includes(train) ? writtenOut(train) : train)),
  };
  const uncertain: Uncertain[] = [];
  for (const train of written.trains.filter(({ id }) => trains.some((one) => one.id === id))) {
    trainPlaces(written, train).forEach(({ vehicle }, index) => {
      const at = `trains/${train.id}/vehicles/${index + 1}`;
      const name = `vehicle ${index + 1} of ${train.name}`;
      for (const end of heads ? (['front', 'rear'] as const) : []) {
        const mm = vehicle[end].coupling.headHeightTolerance * 1e3;
        if (mm > 0) uncertain.push(around(written, `${at}/headHeightOffMm/${end}`, mm, `${end} head of ${name}`));
      }
      const grams = vehicle.mass * 1e3;
      const offG = (grams * massPercent) / 100;
      if (offG > 0)
        uncertain.push({ at: `${at}/massG`, low: grams - offG, high: grams + offG, words: `mass of ${name}` });
    });
  }
  if (supportsMm > 0) {
    const spans = spansOf(scene, trials);
    for (const track of scene.tracks.filter(({ id }) => spans.has(id))) {
      const listed = Array.isArray(track.supports);
      const of = spans.size > 1 ? ` of ${track.name}` : '';
      for (const index of supportsUnder(track, spans.get(track.id) ?? [])) {
        const way = `tracks/${track.id}/supports`;
        const at = listed ? `${way}/${index + 1}/offMm` : `${way}/off/${index + 1}/byMm`;
        uncertain.push(around(written, at, supportsMm, `support ${index + 1}${of}`));
      }
    }
  }
  return { scene: written, uncertain };
}

/** What of each track some trials run over: pairs of chainages, mm, the lesser first. */
function spansOf(scene: Scene, trials: readonly SceneTrial[]): Map<string, [number, number][]> {
  const spans = new Map<string, [number, number][]>();
  for (const { track, fromMm, toMm } of trials.flatMap((trial) => wayOf(scene, trial) ?? [])) {
    const span: [number, number] = [Math.min(fromMm, toMm), Math.max(fromMm, toMm)];
    spans.set(track.id, [...(spans.get(track.id) ?? []), span]);
  }
  return spans;
}

/** Supports further than this beyond what is run over do not count: a strip over many supports passes on a quarter of a bend to the next span (three-moment equation). */
const supportsBeyond = 2;

/** Which supports of a track carry what is run over, counted from 0. */
function supportsUnder(track: SceneTrack, spans: readonly (readonly [number, number])[]): number[] {
  const places = placedSupports(track).map(({ atMm }) => atMm);
  return places.flatMap((_, index) => {
    const before = places[index + supportsBeyond] ?? Number.POSITIVE_INFINITY;
    const after = places[index - supportsBeyond] ?? Number.NEGATIVE_INFINITY;
    return spans.some(([from, to]) => before >= from && after <= to) ? [index] : [];
  });
}

function around(scene: Scene, at: Address, by: number, words: string): Uncertain {
  const now = readAt(scene, at);
  const middle = typeof now === 'number' ? now : 0;
  return { at, low: middle - by, high: middle + by, words };
}

/** A train with an entry for each vehicle. */
const writtenOut = (train: SceneTrain): SceneTrain => ({
  ...train,
  vehicles: train.vehicles.flatMap(({ count = 1, ...entry }) => Array.from({ length: count }, () => ({ ...entry }))),
});
