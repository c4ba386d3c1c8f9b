import { withAt } from '../address.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneCoupling, SceneVehicle } from '../schema/stockSchema.ts';
import { freeId, newId } from './ids.ts';
import { refitted } from './refitted.ts';

/** A field of a vehicle or coupling by the way to it from there: "massG", "drive/stallForceN". */
export type StockField = string;

function named<T extends { readonly id: string }>(list: readonly T[] | undefined, id: string, what: string): T {
  const one = list?.find((entry) => entry.id === id);
  if (one !== undefined) return one;
  throw new RangeError(
    `There is no ${what} "${id}"; there are ${list?.map((entry) => entry.id).join(', ') || 'none'}.`,
  );
}

const uses = (ids: ReadonlySet<string>) => (train: Scene['trains'][number]) =>
  train.vehicles.some(({ stock }) => ids.has(stock));

/** What says the same of a vehicle in another way: given by the one, it has no other. */
const insteadOf: Readonly<Record<StockField, keyof SceneVehicle>> = {
  lengthMm: 'overBuffersMm',
  overBuffersMm: 'lengthMm',
};

/**
 * The scene with one field of a kind of vehicle set, or as usual again when `value` is undefined. A length over buffers stands instead of that of
 * the body, and the other way round. Throws RangeError in words.
 */
export function setVehicleField(
  scene: Scene,
  stockId: string,
  field: StockField,
  value: number | string | boolean | undefined,
): Scene {
  named(scene.stock, stockId, 'vehicle');
  const other = value === undefined ? undefined : insteadOf[field];
  const free = other === undefined ? scene : withAt(scene, `stock/${stockId}/${other}`, undefined);
  return refitted(withAt(free, `stock/${stockId}/${field}`, value), uses(new Set([stockId])));
}

/** The scene with a kind of vehicle that stands on bogies or on a rigid frame, its running points where they were. */
export function setBogies(scene: Scene, stockId: string, on: boolean): Scene {
  return putVehicle(scene, stockId, (file) => {
    const { bogies, wheelbaseMm, axles, ...rest } = file;
    if (on === (bogies !== undefined)) return file;
    if (!on) return { ...rest, wheelbaseMm: bogies?.centresMm ?? 0 };
    const centresMm = wheelbaseMm ?? 0;
    return { ...rest, bogies: { centresMm, wheelbaseMm: centresMm / 4 } };
  });
}

/** The scene with a kind of vehicle that has side buffers of the usual sizes, or none; the length it is given by stays. */
export function setBuffers(scene: Scene, stockId: string, on: boolean): Scene {
  return putVehicle(scene, stockId, ({ buffers, bufferEnds, ...rest }) =>
    on ? { ...rest, buffers: buffers ?? {} } : rest,
  );
}

/** What couples at both ends of a kind of vehicle, or at one of them. */
export function setCoupling(scene: Scene, stockId: string, end: 'both' | 'front' | 'rear', couplingId: string): Scene {
  named(scene.couplings, couplingId, 'coupling');
  return putVehicle(scene, stockId, ({ coupling, frontCoupling, rearCoupling, ...rest }) => {
    const front = end === 'rear' ? (frontCoupling ?? coupling) : couplingId;
    const rear = end === 'front' ? (rearCoupling ?? coupling) : couplingId;
    if (front === rear) return { ...rest, ...(front !== undefined && { coupling: front }) };
    return {
      ...rest,
      ...(front !== undefined && { frontCoupling: front }),
      ...(rear !== undefined && { rearCoupling: rear }),
    };
  });
}

/** The scene with one more kind of vehicle, like another but under another name, behind it in the list. */
export function copyVehicle(scene: Scene, stockId: string, name: string): Scene {
  const like = named(scene.stock, stockId, 'vehicle');
  const id = newId(scene.stock, name, 'vehicle');
  return { ...scene, stock: scene.stock.toSpliced(scene.stock.indexOf(like) + 1, 0, { ...like, id, name }) };
}

/** The scene without a kind of vehicle. Throws RangeError, naming the train or trial that has it. */
export function removeVehicle(scene: Scene, stockId: string): Scene {
  const gone = named(scene.stock, stockId, 'vehicle');
  const train = scene.trains.find(uses(new Set([stockId])));
  if (train !== undefined) throw new RangeError(`${train.name} has a ${gone.name}: take it out there first.`);
  const trial = scene.trials.find(({ passers }) => passers?.includes(stockId));
  if (trial !== undefined) throw new RangeError(`In “${trial.name}” a ${gone.name} stands on the track beside.`);
  return { ...scene, stock: scene.stock.filter(({ id }) => id !== stockId) };
}

/** The scene with one field of a coupling set, or as usual again when `value` is undefined. Throws RangeError in words. */
export function setCouplingField(
  scene: Scene,
  couplingId: string,
  field: StockField,
  value: number | string | boolean | undefined,
): Scene {
  named(scene.couplings, couplingId, 'coupling');
  return refitted(withAt(scene, `couplings/${couplingId}/${field}`, value), uses(coupledBy(scene, couplingId)));
}

/** The scene with a coupling of another family: what was said of the old one does not hold for it and goes. */
export function setCouplingKind(scene: Scene, couplingId: string, kind: SceneCoupling['kind']): Scene {
  const old = named(scene.couplings, couplingId, 'coupling');
  if (old.kind === kind) return scene;
  const couplings = scene.couplings?.map((one) => (one === old ? { id: old.id, kind } : one));
  return refitted({ ...scene, ...(couplings && { couplings }) }, uses(coupledBy(scene, couplingId)));
}

/** The scene with one more coupling, under an id that no other has; nothing is coupled by it yet. */
export function addCoupling(scene: Scene, coupling: SceneCoupling): Scene {
  const couplings = scene.couplings ?? [];
  const id = freeId(
    couplings.map((one) => one.id),
    coupling.id,
  );
  return { ...scene, couplings: [...couplings, { ...coupling, id }] };
}

function putVehicle(scene: Scene, stockId: string, make: (file: SceneVehicle) => SceneVehicle): Scene {
  const old = named(scene.stock, stockId, 'vehicle');
  const stock = scene.stock.map((one) => (one === old ? make(one) : one));
  return refitted({ ...scene, stock }, uses(new Set([stockId])));
}

const coupledBy = ({ stock }: Scene, couplingId: string): ReadonlySet<string> =>
  new Set(
    stock.filter((one) => [one.coupling, one.frontCoupling, one.rearCoupling].includes(couplingId)).map(({ id }) => id),
  );
