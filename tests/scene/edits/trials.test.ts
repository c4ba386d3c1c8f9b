import { describe, expect, it } from 'vitest';
import {
  addOrder,
  parseScene,
  removeOrder,
  removeTrial,
  renameTrial,
  type Scene,
  setOrder,
  setTrialEnd,
} from '../../../src/scene/index.ts';
import { sampleScene } from '../sample.ts';

const orders = (scene: Scene) => scene.trials[0].orders;
const id = sampleScene().trials[0].id;

describe('the orders of a trial', () => {
  it('come one behind the other, each by time or by place', () => {
    const scene = addOrder(
      { ...sampleScene(), trials: [{ ...sampleScene().trials[0], orders: [{ atS: 2, setting: 0.5 }] }] },
      id,
    );
    expect(orders(scene)).toEqual([
      { atS: 2, setting: 0.5 },
      { atS: 12, setting: 0 },
    ]);
    const placed = setOrder(scene, id, 1, { atMm: 3000, setting: -0.3 });
    expect(orders(placed)[1]).toEqual({ atMm: 3000, setting: -0.3 });
    expect(orders(setOrder(placed, id, 1, { rampS: 4 }))[1]).toEqual({ atMm: 3000, setting: -0.3, rampS: 4 });
    const held = setOrder(placed, id, 1, { atS: 20, holdMmPerS: 150 });
    expect(orders(held)[1]).toEqual({ atS: 20, setting: -0.3, holdMmPerS: 150 });
    expect(orders(setOrder(held, id, 1, { holdMmPerS: undefined }))[1]).toEqual({ atS: 20, setting: -0.3 });
    expect(parseScene(held).ok).toBe(true);
    expect(orders(removeOrder(held, id, 0))).toHaveLength(1);
    expect(() => removeOrder(removeOrder(held, id, 0), id, 0)).toThrow('Without an order the train stands still.');
  });
});

describe('a trial', () => {
  it('is called otherwise, begins and ends elsewhere, and goes', () => {
    const scene = renameTrial(sampleScene(), id, 'First run');
    expect(scene.trials[0]).toMatchObject({ id, name: 'First run' });
    const placed = setTrialEnd(setTrialEnd(scene, id, 'startMm', 900), id, 'finishMm', 5000);
    expect(placed.trials[0]).toMatchObject({ startMm: 900, finishMm: 5000 });
    const back = setTrialEnd(placed, id, 'startMm', undefined);
    expect(back.trials[0]).not.toHaveProperty('startMm');
    const two = { ...scene, trials: [scene.trials[0], { ...scene.trials[0], id: 'second' }], opensWith: 'second' };
    expect(removeTrial(two, 'second').trials).toHaveLength(1);
    expect(removeTrial(two, 'second')).not.toHaveProperty('opensWith');
    expect(removeTrial(two, id).opensWith).toBe('second');
    expect(() => removeTrial({ ...scene, trials: [scene.trials[0]] }, id)).toThrow(/only trial/);
    expect(() => renameTrial(scene, 'none', 'x')).toThrow('There is no trial "none".');
  });
});
