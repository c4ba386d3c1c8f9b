import { describe, expect, it } from 'vitest';
import { newPlacement, placeVehicle } from '../../src/core/stock/index.ts';
import {
  parseScene,
  removeTrial,
  type Scene,
  type SceneTrial,
  setFollows,
  setStop,
  usualValues,
} from '../../src/scene/index.ts';
import { applyCure, compileScene, compileTrial, runTrial } from '../../src/sim/index.ts';
import { affectedTrials } from '../../src/sim/study/affected.ts';
import { scaleNamed, shapeNamed } from '../scene/shapes/named.ts';
import { patience, solve } from './solved.ts';

const shape = shapeNamed('switchback');
const { scene } = shape.make(scaleNamed('HO'), usualValues(shape, scaleNamed('HO')));
const changed = (id: string, change: object): Scene => ({
  ...scene,
  trials: scene.trials.map((trial) => (trial.id === id ? ({ ...trial, ...change } as SceneTrial) : trial)),
});
const trialOf = (from: Scene, id: string): SceneTrial => {
  const trial = from.trials.find((one) => one.id === id);
  if (trial === undefined) throw new Error(id);
  return trial;
};
const problems = (of: Scene) => {
  const parsed = parseScene(of);
  return parsed.ok ? [] : parsed.problems;
};

describe('a trial that goes on from another', { timeout: patience }, () => {
  it('begins on the same places in space, the other end ahead, with every coupling as it was', async () => {
    const first = await solve(scene, 'climbs-1');
    const second = await solve(scene, 'climbs-2');
    const n = first.run.vehicles;
    const last = first.run.frames - 1;
    const [here, there] = [newPlacement(), newPlacement()];
    for (let i = 0; i < n; i++) {
      const other = n - 1 - i;
      placeVehicle(first.trial.path.track, first.trial.train.vehicles[i], first.run.chainage[last * n + i], here);
      placeVehicle(second.trial.path.track, second.trial.train.vehicles[other], second.run.chainage[other], there);
      for (const axis of [0, 1, 2]) expect(there.origin[axis]).toBeCloseTo(here.origin[axis], 6);
      // It faces the way it faced, whichever end leads.
      for (const axis of [0, 1, 2]) expect(there.ahead[axis]).toBeCloseTo(-here.ahead[axis], 6);
    }
    for (let j = 0; j < n - 1; j++) {
      expect(second.run.extension[n - 2 - j]).toBeCloseTo(first.run.extension[last * (n - 1) + j], 12);
      expect(second.run.force[n - 2 - j]).toBeCloseTo(first.run.force[last * (n - 1) + j], 6);
      expect(second.run.force[j]).toBeGreaterThan(0);
    }
    expect(second.trial.propelled).toBe(true);
  });

  it('takes up twice the slack of a start from the middle of it: its last coach moves later', async () => {
    const { follows: _, ...alone } = trialOf(scene, 'climbs-2');
    const fresh = await solve({ ...scene, trials: [{ ...alone, startMm: 896 }] }, 'climbs-2');
    const taken = await solve(scene, 'climbs-2');
    const slack = (of: typeof fresh) => {
      const { run } = of;
      const n = run.vehicles;
      let f = 0;
      while (run.chainage[f * n] - run.chainage[0] < 1e-6) f++;
      return run.chainage[f * n + n - 1] - run.chainage[n - 1];
    };
    // The joints of this train have 1.4 mm of slack each: closed form 3 × 1.4 mm, and half of it.
    expect(slack(taken) / slack(fresh)).toBeGreaterThan(1.7);
    expect(slack(taken) / slack(fresh)).toBeLessThan(2.3);
  });

  it('gives the same bits every time it is run', async () => {
    const one = await solve(scene, 'climbs-2');
    const again = await runTrial(compileTrial(compileScene(scene), 'climbs-2'));
    expect(again.run).toEqual(one.run);
  });

  it('is not reached when the trial before it does not end at a stand', async () => {
    await expect(solve(changed('climbs-1', { timeLimitS: 5 }), 'climbs-2')).rejects.toThrow(
      'Trial "climbs-2" is not reached: "climbs-1", which it goes on from, has not come to a stand when its time is over.',
    );
    await expect(solve(changed('climbs-1', { orders: [{ atS: 0, setting: 0.05 }] }), 'climbs-2')).rejects.toThrow(
      /stalls/,
    );
  });

  it('says by how much the train stands short of its way', async () => {
    await expect(solve(changed('climbs-1', { finishMm: 6700, timeLimitS: 120 }), 'climbs-2')).rejects.toThrow(
      /not the whole train comes to its stand on its way: the last wheels stand \d+\.\d mm short of it/,
    );
  });

  it('has that end of the train ahead that leads as it stands', () => {
    const wrong = changed('climbs-2', { leading: 'first' });
    expect(() => compileTrial(compileScene(wrong), 'climbs-2')).toThrow(/let its end "last" lead/);
  });

  it('is refused without a stand, in a circle, with a start of its own or another train', () => {
    const { stopS: _, ...moving } = trialOf(scene, 'climbs-1');
    const trials = scene.trials.map((trial) => (trial.id === 'climbs-1' ? moving : trial));
    expect(problems({ ...scene, trials })[0]).toMatchObject({ found: expect.stringMatching(/still moving/) });
    expect(problems(changed('climbs-1', { follows: 'climbs-3' }))[0]).toMatchObject({
      found: expect.stringMatching(/circle/),
    });
    expect(problems(changed('climbs-2', { startMm: 900 }))[0]?.path).toMatch(/startMm$/);
    expect(problems(changed('climbs-2', { follows: 'nobody' }))[0]?.allowed).toMatch(/climbs-1/);
    expect(problems(scene)).toEqual([]);
  });

  it('begins by itself where it took the train over when the one before is removed', () => {
    const left = removeTrial(scene, 'climbs-1');
    expect(trialOf(left, 'climbs-2').follows).toBeUndefined();
    expect(trialOf(left, 'climbs-2').startMm).toBeGreaterThan(850);
    expect(problems(left)).toEqual([]);
  });

  it('is made by an edit that turns the train and stops the one before, and is kept from losing that stop', () => {
    const { stopS: _, ...moving } = trialOf(scene, 'climbs-1');
    const { follows: __, ...loose } = { ...trialOf(scene, 'climbs-2'), leading: 'first' as const };
    const made = setFollows({ ...scene, trials: [moving, loose] }, 'climbs-2', 'climbs-1');
    expect(trialOf(made, 'climbs-2')).toMatchObject({ follows: 'climbs-1', leading: 'last' });
    expect(trialOf(made, 'climbs-1').stopS).toBe(1);
    expect(() => setStop(made, 'climbs-1', undefined)).toThrow(/goes on from it/);
    expect(() => setFollows(made, 'climbs-1', 'climbs-2')).toThrow(/itself goes on from/);
    expect(trialOf(setFollows(made, 'climbs-2', undefined), 'climbs-2').follows).toBeUndefined();
  });

  it('is turned with the others by a cure, and told as affected by what changes them', () => {
    const turned = applyCure(scene, 'climbs-2', { kind: 'change-working' });
    expect(turned?.trials.filter(({ id }) => id.startsWith('climbs')).map(({ leading }) => leading)).toEqual([
      'last',
      'first',
      'last',
    ]);
    expect(affectedTrials(scene, 'trials/climbs-1/finishMm')).toEqual(['climbs-1', 'climbs-2', 'climbs-3']);
  });
});
