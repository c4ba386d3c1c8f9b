import { describe, expect, it } from 'vitest';
import {
  bufferDefaults,
  couplingDefaults,
  driveDefaults,
  rollingDefaults,
  trialDefaults,
  vehicleDefaults,
} from '../../src/scene/defaults.ts';
import { type Scene, type SceneVehicle, trainLength, trainPlaces, vehicleOf } from '../../src/scene/index.ts';
import { sampleScene } from './sample.ts';

const wagon: SceneVehicle = { id: 'wagon', name: 'Wagon', kind: 'wagon', lengthMm: 100, wheelbaseMm: 40 };

const atGauge = (gaugeMm: number): Scene => ({ ...sampleScene(), scale: { name: 'any', gaugeMm } });

describe('a vehicle in SI', () => {
  it('measures its body between headstocks, with buffers beyond', () => {
    const coach = vehicleOf(sampleScene(), sampleScene().stock[1]);
    // 258 mm over buffers of 6 mm each are 246 mm of body; 186 mm between pivots leave 30 mm at either end.
    expect(coach.bodyLength).toBeCloseTo(0.246, 12);
    expect(coach.frontOverhang).toBeCloseTo(0.03, 12);
    expect(coach.rearOverhang).toBeCloseTo(0.03, 12);
    expect(coach.front.buffers?.length).toBe(0.006);
    expect(coach.bogies).toBe(true);
    expect(coach.rigidWheelbase).toBe(0.034);
  });

  it('divides unequal overhangs as the file says', () => {
    const engine = vehicleOf(sampleScene(), { ...wagon, frontOverhangMm: 40 });
    expect(engine.frontOverhang).toBeCloseTo(0.04, 12);
    expect(engine.rearOverhang).toBeCloseTo(0.02, 12);
    expect(engine.rigidWheelbase).toBe(0.04);
  });

  it('has the axles that the file gives its frame, and leaves the count to the mechanics otherwise', () => {
    expect(vehicleOf(sampleScene(), { ...wagon, axles: 3 }).axles).toBe(3);
    expect('axles' in vehicleOf(sampleScene(), wagon)).toBe(false);
    const { wheelbaseMm: _frame, ...body } = wagon;
    const bogies = { centresMm: 60, wheelbaseMm: 24 };
    expect(vehicleOf(sampleScene(), { ...body, bogies: { ...bogies, axles: 3 } }).bogieAxles).toBe(3);
    expect('bogieAxles' in vehicleOf(sampleScene(), { ...body, bogies })).toBe(false);
  });

  it('has its wheels as measured, and its holds and tilts where the file gives them', () => {
    const measured = vehicleOf(sampleScene(), { ...wagon, wheels: { backToBackMm: 14.3, flangeAngleDeg: 60 } });
    expect(measured.wheels?.backToBack).toBeCloseTo(0.0143, 12);
    expect(measured.wheels?.flangeAngle).toBeCloseTo(Math.PI / 3, 12);
    expect(measured.wheels?.flangeDepth).toBeUndefined();
    const scene = {
      ...sampleScene(),
      couplings: [{ id: 'held', kind: 'loop', sideHoldMm: 4, freeTiltDeg: 6 } as const],
    };
    const { coupling } = vehicleOf(scene, { ...wagon, coupling: 'held' }).front;
    expect(coupling.sideHold).toBeCloseTo(0.004, 12);
    expect(coupling.freeTilt).toBeCloseTo(Math.PI / 30, 12);
    expect(vehicleOf(sampleScene(), wagon).front.coupling.freeTilt).toBeUndefined();
  });

  it('has buffers at the ends that have them', () => {
    const tender = vehicleOf(sampleScene(), { ...wagon, buffers: {}, bufferEnds: 'rear' });
    expect(tender.front.buffers).toBeNull();
    expect(tender.rear.buffers).not.toBeNull();
    expect(vehicleOf(sampleScene(), wagon).rear.buffers).toBeNull();
  });

  // NEM 302 (2015): Z 0.12, N 0.17, TT 0.25, H0 0.40, S 0.60, 0 1.00, I 2.00, II 4.00 g for each mm over buffers.
  it.each([
    [6.5, 12],
    [9, 17],
    [12, 25],
    [16.5, 40],
    [22.5, 60],
    [32, 100],
    [45, 200],
    [64, 400],
  ])('weighs what the standard asks at %f mm gauge', (gaugeMm, grams) => {
    expect(vehicleOf(atGauge(gaugeMm), wagon).mass * 1000).toBeCloseTo(grams, 9);
  });

  it('adds what a head is off, of the kind and of the one vehicle', () => {
    const off = vehicleOf(
      sampleScene(),
      { ...wagon, coupling: 'bar', headHeightOffMm: { front: -0.4, rear: 0.2 } },
      { headHeightOffMm: { front: -0.6 } },
    );
    const usual = couplingDefaults['hook-and-bar'].headHeightMm.value / 1000;
    expect(off.front.coupling.headHeight).toBeCloseTo(usual - 0.001, 12);
    expect(off.rear.coupling.headHeight).toBeCloseTo(usual + 0.0002, 12);
  });

  it('makes things twice as long at twice the gauge', () => {
    const small = vehicleOf(atGauge(16.5), wagon);
    const large = vehicleOf(atGauge(33), wagon);
    expect(large.bodyHeight).toBeCloseTo(2 * small.bodyHeight, 12);
    expect(large.front.coupling.reach).toBeCloseTo(2 * small.front.coupling.reach, 12);
    expect(large.bodyLength).toBe(small.bodyLength);
  });

  it('never lets go where the file names no release force', () => {
    expect(vehicleOf(sampleScene(), wagon).front.coupling.release).toBe(Number.POSITIVE_INFINITY);
  });

  it('has a motor that can spin its wheels unless the file says otherwise', () => {
    const { drive } = vehicleOf(sampleScene(), sampleScene().stock[0]);
    expect(drive?.drivenMass).toBe(0.3);
    expect(drive?.stallForce).toBeGreaterThan((drive?.adhesion ?? 0) * 0.3 * 9.80665);
    expect(drive?.slidingAdhesion).toBeLessThan(drive?.adhesion ?? 0);
    expect(drive?.worm).toBe(true);
  });
});

describe('a train', () => {
  it('has its counts written out, in the order of the file', () => {
    const places = trainPlaces(sampleScene(), sampleScene().trains[0]);
    expect(places.map(({ entry, vehicle }) => [entry, vehicle.name])).toEqual([
      [0, 'Engine'],
      [1, 'Coach'],
      [1, 'Coach'],
    ]);
  });

  it('is as long as its bodies and the gaps of its couplings', () => {
    // Pivots 8.5 mm inside, 18.5 mm of reach: 20 mm between two bodies.
    const places = trainPlaces(sampleScene(), sampleScene().trains[0]);
    expect(trainLength(places)).toBeCloseTo(0.12 + 0.246 + 0.246 + 2 * 0.02, 12);
  });
});

describe('the table of defaults', () => {
  const tables = {
    ...couplingDefaults,
    bufferDefaults,
    driveDefaults,
    rollingDefaults,
    trialDefaults,
    vehicleDefaults,
  };
  const rows = Object.entries(tables).flatMap(([name, table]) =>
    Object.entries(table).flatMap(([field, row]) =>
      typeof row === 'object' ? [[`${name} ${field}`, row] as const] : [],
    ),
  );

  it.each(rows)('%s lies within its range and names its source', (_name, row) => {
    expect(row.low).toBeLessThanOrEqual(row.value);
    expect(row.value).toBeLessThanOrEqual(row.high);
    expect(row.source.length).toBeGreaterThan(8);
  });
});
