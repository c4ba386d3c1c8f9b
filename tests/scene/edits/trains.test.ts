import { describe, expect, it } from 'vitest';
import {
  addVehicle,
  copyTrain,
  copyVehicle,
  moveEntry,
  parseScene,
  removeEntry,
  removeTrain,
  removeVehicle,
  renameTrain,
  type Scene,
  setBogies,
  setBuffers,
  setCoupling,
  setCouplingField,
  setCouplingKind,
  setEntry,
  setVehicleField,
  trainLength,
  trainPlaces,
} from '../../../src/scene/index.ts';
import { sampleScene } from '../sample.ts';

const entries = (scene: Scene, train = 0) => scene.trains[train].vehicles;
const vehicle = (scene: Scene, id: string) => scene.stock.find((one) => one.id === id);
const coachLength = 258;

describe('the make-up of a train', () => {
  it('takes vehicles in, out, along and round', () => {
    const longer = addVehicle(sampleScene(), 'train', 'coach');
    expect(entries(longer)).toEqual([{ stock: 'engine' }, { stock: 'coach', count: 2 }, { stock: 'coach' }]);
    expect(entries(addVehicle(longer, 'train', 'coach', 0))[0]).toEqual({ stock: 'coach' });
    expect(entries(moveEntry(longer, 'train', 0, 1))[1]).toEqual({ stock: 'engine' });
    expect(moveEntry(longer, 'train', 0, -1)).toBe(longer);
    expect(entries(setEntry(longer, 'train', 1, { count: 1, turned: true }))[1]).toEqual({
      stock: 'coach',
      turned: true,
    });
    expect(entries(setEntry(longer, 'train', 1, { turned: false }))[1]).toEqual({ stock: 'coach', count: 2 });
    expect(entries(removeEntry(longer, 'train', 0))).toEqual([{ stock: 'coach', count: 2 }, { stock: 'coach' }]);
  });

  it('brings its trials inside their tracks again', () => {
    const start = { ...sampleScene() };
    const trials = start.trials.map((trial) => ({ ...trial, towards: 'end' as const, startMm: 700 }));
    const longer = setEntry({ ...start, trials }, 'train', 1, { count: 6 });
    const length = trainLength(trainPlaces(longer, longer.trains[0])) * 1000;
    expect(length).toBeGreaterThan(120 + 6 * (coachLength - 20));
    for (const trial of longer.trials) expect(trial.startMm).toBeCloseTo(length, 6);
    expect(parseScene(longer).ok).toBe(true);
  });

  it('refuses in words what cannot be', () => {
    const alone = removeEntry(sampleScene(), 'train', 0);
    expect(() => removeEntry(alone, 'train', 0)).toThrow('Train needs at least one vehicle.');
    expect(() => setEntry(alone, 'train', 0, { count: 500 })).toThrow(/500 vehicles; at most 120/);
    expect(() => setEntry(alone, 'train', 0, { count: 30 })).toThrow(/Train is .* long and has no room to run on Line/);
    expect(() => addVehicle(alone, 'express', 'coach')).toThrow('There is no train "express"; there are train.');
    expect(() => removeTrain(alone, 'train')).toThrow(/Every trial is run with Train/);
    expect(() => removeVehicle(alone, 'coach')).toThrow('Train has a Coach: take it out there first.');
    expect(removeVehicle(alone, 'engine').stock.map(({ id }) => id)).toEqual(['coach']);
  });

  it('is copied under a name of its own and goes with its trials', () => {
    const two = renameTrain(copyTrain(sampleScene(), 'train', 'Night train'), 'night-train', 'Night mail');
    expect(two.trains.map(({ id, name }) => [id, name])).toEqual([
      ['train', 'Train'],
      ['night-train', 'Night mail'],
    ]);
    const trial = { ...two.trials[0], id: 'night', train: 'night-train' };
    const gone = removeTrain({ ...two, trials: [...two.trials, trial], opensWith: 'night' }, 'night-train');
    expect(gone).toEqual(sampleScene());
  });
});

describe('a kind of vehicle', () => {
  it('is given numbers, and left to the usual ones again', () => {
    const lighter = setVehicleField(sampleScene(), 'coach', 'massG', 95);
    expect(vehicle(lighter, 'coach')?.massG).toBe(95);
    expect(vehicle(setVehicleField(lighter, 'coach', 'massG', undefined), 'coach')).not.toHaveProperty('massG');
    expect(vehicle(setVehicleField(lighter, 'engine', 'drive/stallForceN', 0.8), 'engine')?.drive).toEqual({
      drivenMassG: 300,
      stallForceN: 0.8,
    });
    expect(() => setVehicleField(lighter, 'van', 'massG', 1)).toThrow(
      'There is no vehicle "van"; there are engine, coach.',
    );
  });

  it('stands on bogies or a frame with its running points where they were', () => {
    const rigid = setBogies(sampleScene(), 'coach', false);
    expect(vehicle(rigid, 'coach')).toMatchObject({ wheelbaseMm: 186 });
    expect(vehicle(rigid, 'coach')).not.toHaveProperty('bogies');
    expect(vehicle(setBogies(rigid, 'coach', true), 'coach')?.bogies?.centresMm).toBe(186);
    expect(parseScene(setBogies(sampleScene(), 'engine', true)).ok).toBe(true);
  });

  it('has buffers or none', () => {
    expect(vehicle(setBuffers(sampleScene(), 'coach', false), 'coach')).not.toHaveProperty('buffers');
    expect(vehicle(setBuffers(sampleScene(), 'engine', true), 'engine')?.buffers).toEqual({});
  });

  it('couples by one coupling or by two', () => {
    const scene = {
      ...sampleScene(),
      couplings: [
        { id: 'bar', kind: 'hook-and-bar' as const },
        { id: 'tight', kind: 'close' as const },
      ],
    };
    const one = setCoupling(scene, 'coach', 'rear', 'tight');
    expect(vehicle(one, 'coach')).toMatchObject({ frontCoupling: 'bar', rearCoupling: 'tight' });
    expect(vehicle(one, 'coach')).not.toHaveProperty('coupling');
    expect(vehicle(setCoupling(one, 'coach', 'front', 'tight'), 'coach')).toMatchObject({ coupling: 'tight' });
    expect(vehicle(setCoupling(one, 'coach', 'both', 'bar'), 'coach')).toMatchObject({ coupling: 'bar' });
    expect(() => setCoupling(scene, 'coach', 'both', 'chain')).toThrow(/no coupling "chain"/);
  });

  it('is copied under its own name', () => {
    const more = copyVehicle(sampleScene(), 'coach', 'Sleeping car');
    expect(more.stock.map(({ id }) => id)).toEqual(['engine', 'coach', 'sleeping-car']);
    expect(vehicle(more, 'sleeping-car')).toMatchObject({ overBuffersMm: coachLength, name: 'Sleeping car' });
  });
});

describe('a coupling', () => {
  it('keeps only its name when it becomes another kind', () => {
    const stiff = setCouplingField(sampleScene(), 'bar', 'slackMm', 1.2);
    expect(stiff.couplings).toEqual([{ id: 'bar', kind: 'hook-and-bar', slackMm: 1.2 }]);
    expect(setCouplingKind(stiff, 'bar', 'knuckle').couplings).toEqual([{ id: 'bar', kind: 'knuckle' }]);
    expect(setCouplingKind(stiff, 'bar', 'hook-and-bar')).toBe(stiff);
  });
});
