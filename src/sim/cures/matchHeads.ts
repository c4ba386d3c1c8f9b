import { type Scene, type SceneTrain, tidy, trainPlaces } from '../../scene/index.ts';
import { trialParts, withTrain } from './parts.ts';

/** Heads closer in height than this already match, m: far below what a gauge shows. */
const matched = 1e-6;

/**
 * Sets both heads of a joint (counted from 0 at the leading end) to the height of the coupling, less whatever they are
 * off by; two couplings of different nominal height meet in the middle. Null when they match already.
 */
export function matchHeads(scene: Scene, trialId: string, joint: number): Scene | null {
  const parts = trialParts(scene, trialId);
  if (parts === null) return null;
  const places = trainPlaces(scene, parts.train);
  const first = parts.trial.leading === 'first' ? joint : places.length - 2 - joint;
  const before = places[first];
  const after = places[first + 1];
  if (before === undefined || after === undefined) return null;
  const endBefore = before.turned ? 'front' : 'rear';
  const endAfter = after.turned ? 'rear' : 'front';
  const heights = [before.vehicle[endBefore].coupling.headHeight, after.vehicle[endAfter].coupling.headHeight];
  if (Math.abs(heights[0] - heights[1]) < matched) return null;
  const written = writtenOut(parts.train);
  const offs = [headOff(scene, written, first, endBefore), headOff(scene, written, first + 1, endAfter)];
  const target = (heights[0] - offs[0].total * 1e-3 + heights[1] - offs[1].total * 1e-3) / 2;
  const vehicles = written.vehicles.map((entry, index) => {
    if (index !== first && index !== first + 1) return entry;
    const end = index === first ? endBefore : endAfter;
    const side = index - first;
    const own = tidy(offs[side].own + (target - heights[side]) * 1e3);
    return { ...entry, headHeightOffMm: { ...entry.headHeightOffMm, [end]: own } };
  });
  return withTrain(scene, { ...written, vehicles });
}

/** The same train with every vehicle an entry of its own. */
const writtenOut = (train: SceneTrain): SceneTrain => ({
  ...train,
  vehicles: train.vehicles.flatMap(({ count = 1, ...entry }) => Array.from({ length: count }, () => entry)),
});

function headOff(
  scene: Scene,
  train: SceneTrain,
  index: number,
  end: 'front' | 'rear',
): { own: number; total: number } {
  const entry = train.vehicles[index];
  const own = entry.headHeightOffMm?.[end] ?? 0;
  const fitted = scene.stock.find((one) => one.id === entry.stock)?.headHeightOffMm?.[end] ?? 0;
  return { own, total: own + fitted };
}
