import { describe, expect, it } from 'vitest';
import { parseScene, type Scene, vehicleOf } from '../../src/scene/index.ts';
import {
  copyTrain,
  couplingNumbers,
  missingWorkings,
  removeEntry,
  setBuffers,
  setVehicleField,
  vehicleNumbers,
  withAllWorkings,
} from '../../src/state/stock/index.ts';
import { sampleScene } from '../scene/sample.ts';

const kind = (scene: Scene, id: string) => scene.stock.find((one) => one.id === id) ?? scene.stock[0];
const numbersOf = (scene: Scene, id: string) =>
  new Map(vehicleNumbers(scene, kind(scene, id)).flatMap(({ numbers }) => numbers.map((one) => [one.field, one])));

describe('numbers of a vehicle', () => {
  it('say what is given and what is usual', () => {
    const coach = numbersOf(sampleScene(), 'coach');
    expect(coach.get('massG')).toMatchObject({ value: 120, given: true });
    // NEM 302 (2015): 0.4 g for each mm over buffers at 16.5 mm gauge.
    expect(coach.get('massG')?.usual).toBeCloseTo(0.4 * 258, 6);
    expect(coach.get('overBuffersMm')).toMatchObject({ value: 258, given: true, usual: null });
    expect(coach.get('widthMm')?.given).toBe(false);
    expect(coach.get('widthMm')?.usual).toBe(coach.get('widthMm')?.value);
    expect(coach.has('lengthMm')).toBe(false);
    expect(coach.has('drive/stallForceN')).toBe(false);
    expect(numbersOf(sampleScene(), 'engine').get('drive/drivenMassG')).toMatchObject({ value: 300, usual: 300 });
  });

  it('are told over the buffers where there are any, and taken so, however the file has the length', () => {
    const scene = setBuffers(sampleScene(), 'engine', true);
    const { lengthMm = Number.NaN } = kind(scene, 'engine');
    // Usual buffers stand 6 mm beyond the body at either end.
    expect(numbersOf(scene, 'engine').get('overBuffersMm')).toMatchObject({ value: lengthMm + 12, given: true });
    const longer = setVehicleField(scene, 'engine', 'overBuffersMm', lengthMm + 20);
    expect(kind(longer, 'engine').lengthMm).toBeUndefined();
    expect(1000 * vehicleOf(longer, kind(longer, 'engine')).bodyLength).toBeCloseTo(lengthMm + 8, 9);
    const byBody = setVehicleField(longer, 'engine', 'lengthMm', lengthMm);
    expect(kind(byBody, 'engine').overBuffersMm).toBeUndefined();
    expect(parseScene(byBody).ok).toBe(true);
  });

  it('count axles: of a rigid frame, of each bogie', () => {
    const scene = sampleScene();
    expect(numbersOf(scene, 'engine').get('axles')).toMatchObject({ value: 3, usual: 3, given: false });
    const four = setVehicleField(scene, 'engine', 'axles', 4);
    expect(numbersOf(four, 'engine').get('axles')).toMatchObject({ value: 4, usual: 3, given: true });
    expect(vehicleOf(four, kind(four, 'engine')).axles).toBe(4);
    expect(numbersOf(scene, 'coach').get('bogies/axles')).toMatchObject({ value: 2, usual: 2, least: 2, most: 3 });
    const six = setVehicleField(scene, 'coach', 'bogies/axles', 3);
    expect(vehicleOf(six, kind(six, 'coach')).bogieAxles).toBe(3);
    expect(vehicleOf(scene, kind(scene, 'coach')).bogieAxles ?? 2).toBe(2);
    expect(parseScene(setVehicleField(scene, 'coach', 'bogies/axles', 2.5)).ok).toBe(false);
  });

  it('hold for what is solved once they are put back', () => {
    const scene = setBuffers(sampleScene(), 'engine', true);
    for (const { field, value, least, most } of numbersOf(scene, 'engine').values()) {
      expect(value, field).toBeGreaterThanOrEqual(least);
      expect(value, field).toBeLessThanOrEqual(most);
      const same = setVehicleField(scene, 'engine', field, value);
      expect(parseScene(same).ok, field).toBe(true);
      const again = numbersOf(same, 'engine').get(field);
      expect(again?.value, field).toBeCloseTo(value, 5);
      expect(again?.given).toBe(true);
      expect(vehicleOf(same, kind(same, 'engine')).bodyLength).toBeCloseTo(0.12, 9);
    }
  });

  it('of a coupling are those that a vehicle of this gauge has', () => {
    const scene = sampleScene();
    const file = { id: 'bar', kind: 'hook-and-bar' as const, slackMm: 1.3 };
    const numbers = new Map(couplingNumbers(scene, file).map((one) => [one.field, one]));
    expect(numbers.get('slackMm')).toMatchObject({ value: 1.3, given: true });
    expect(numbers.get('slackMm')?.usual).not.toBe(1.3);
    expect(numbers.get('headHeightMm')?.value).toBeCloseTo(
      vehicleOf(scene, kind(scene, 'coach')).front.coupling.headHeight * 1e3,
      6,
    );
  });
});

describe('the trials of a train', () => {
  it('are made for each way it can be worked and named by it', () => {
    const two = copyTrain(sampleScene(), 'train', 'Night train');
    expect(missingWorkings(two, 'night-train', 'line')).toHaveLength(4);
    const all = withAllWorkings(two, 'night-train', 'line', two.trials[0].id);
    expect(missingWorkings(all, 'night-train', 'line')).toEqual([]);
    expect(parseScene(all).ok).toBe(true);
    expect(all.trials.slice(two.trials.length).map(({ name }) => name)).toEqual([
      'Night train pulled up',
      'Night train pulled down',
      'Night train propelled up',
      'Night train propelled down',
    ]);
    expect(new Set(all.trials.map(({ id }) => id)).size).toBe(all.trials.length);
  });

  it('that are there already stay as they are', () => {
    const scene = sampleScene();
    const all = withAllWorkings(scene, 'train', 'line', scene.trials[0].id);
    expect(all.trials.slice(0, scene.trials.length)).toEqual(scene.trials);
    expect(withAllWorkings(all, 'train', 'line', scene.trials[0].id).trials).toEqual(all.trials);
  });

  it('of a train without an engine are named by which end leads', () => {
    const cut = removeEntry(copyTrain(sampleScene(), 'train', 'Cut'), 'cut', 0);
    const names = withAllWorkings(cut, 'cut', 'line', cut.trials[0].id).trials.map(({ name }) => name);
    expect(names).toContain('Cut first vehicle ahead, up');
    expect(names).toContain('Cut last vehicle ahead, down');
  });
});
