import type { Scene } from '../schema/schema.ts';
import type { SceneCoupling, SceneVehicle } from '../schema/stockSchema.ts';
import type { SceneTrain } from '../schema/trialSchema.ts';
import { trainLength, trainPlaces } from '../trains.ts';
import { deckFor, type ShapeScale } from './scales.ts';

/**
 * Typical vehicles, full size in m: a coach of the shortest group of NEM 103 (body 20.0 m, bogie centres 14.0 m), a covered van and a six-coupled tank engine of
 * usual size (common practice, no source).
 */
const full = {
  coach: { body: 20, centres: 14, bogie: 2.5, width: 2.9, height: 3.9 },
  van: { body: 8, wheelbase: 4.5, width: 2.7, height: 3.6 },
  engine: { body: 9.6, wheelbase: 4.7, width: 2.8, height: 4.0 },
} as const;

/** Mass of an engine to that of a coach as long by NEM 302: a cast frame and a motor. Assumption. */
const engineHeavier = 2.5;

/** NEM 302 (2015), g/mm at 16.5 mm gauge, and with the 1.6th power of the gauge from there: what its rows come to within a tenth. */
const engineMassG = (lengthMm: number, gaugeMm: number): number =>
  Math.round(engineHeavier * lengthMm * 0.4 * (gaugeMm / 16.5) * Math.sqrt(gaugeMm / 16.5));

const coupling = ({ name }: ShapeScale): SceneCoupling => ({
  id: 'coupling',
  kind: name === 'OO' ? 'hook-and-bar' : 'loop',
});

const tenth = (mm: number): number => Math.round(mm * 10) / 10;

/** Coupling, vehicles and train that a new railway comes with: an engine and `coaches` coaches. */
export function usualStock(
  scale: ShapeScale,
  coaches: number,
): { readonly couplings: SceneCoupling[]; readonly stock: SceneVehicle[]; readonly train: SceneTrain } {
  const mm = (metres: number): number => tenth((metres * 1000) / scale.ratio);
  const ends = { coupling: 'coupling', buffers: {} };
  const { coach, van, engine } = full;
  const engineMm = mm(engine.body);
  return {
    couplings: [coupling(scale)],
    stock: [
      {
        id: 'tank-engine',
        name: 'Six-coupled tank engine',
        kind: 'locomotive',
        massG: engineMassG(engineMm, scale.gaugeMm),
        lengthMm: engineMm,
        wheelbaseMm: mm(engine.wheelbase),
        widthMm: mm(engine.width),
        heightMm: mm(engine.height),
        ...ends,
        drive: { drivenWheelbaseMm: mm(engine.wheelbase) },
      },
      {
        id: 'coach',
        name: 'Bogie coach',
        kind: 'coach',
        lengthMm: mm(coach.body),
        bogies: { centresMm: mm(coach.centres), wheelbaseMm: mm(coach.bogie) },
        widthMm: mm(coach.width),
        heightMm: mm(coach.height),
        ...ends,
      },
      {
        id: 'van',
        name: 'Covered van',
        kind: 'wagon',
        lengthMm: mm(van.body),
        wheelbaseMm: mm(van.wheelbase),
        widthMm: mm(van.width),
        heightMm: mm(van.height),
        ...ends,
      },
    ],
    train: {
      id: 'train',
      name: coaches === 1 ? 'Engine and coach' : `Engine and ${coaches} coaches`,
      vehicles: [{ stock: 'tank-engine' }, { stock: 'coach', ...(coaches > 1 && { count: coaches }) }],
    },
  };
}

/** Throws RangeError, saying what would do, for a curve that the usual coach has no room on: its bogies stand further apart than the radius, mm. */
export function roomForCoach(scale: ShapeScale, radiusMm: number): void {
  const centresMm = tenth((full.coach.centres * 1000) / scale.ratio);
  if (radiusMm > centresMm) return;
  throw new RangeError(
    `The bogies of a coach stand ${centresMm} mm apart, on a curve of ${radiusMm} mm: a radius of more than ${Math.ceil(centresMm)} mm.`,
  );
}

/** Length of the train that a new railway comes with, mm. */
export function usualTrainMm(scale: ShapeScale, coaches: number): number {
  const { couplings, stock, train } = usualStock(scale, coaches);
  const scene = { scale, deck: deckFor(scale), couplings, stock, trains: [train] } as unknown as Scene;
  return trainLength(trainPlaces(scene, train)) * 1000;
}
