import { describe, expect, it } from 'vitest';
import { parseScene } from '../../src/scene/index.ts';
import { givenWorking, runningSetting, trialWorked, withSetting, withTrialWorked } from '../../src/state/trialEdits.ts';
import { readWorking } from '../../src/state/working.ts';
import { sceneForTests } from './fakeHost.ts';

const scene = sceneForTests();
const [like] = scene.trials;
const { towards } = givenWorking(scene, like);
const other = { first: 'last', last: 'first' } as const;
const back = { end: 'start', start: 'end' } as const;

describe('a trial worked another way', () => {
  it('is one that a scene file may hold, whichever way it is turned', () => {
    for (const leading of ['first', 'last'] as const) {
      for (const towards of ['end', 'start'] as const) {
        const made = withTrialWorked(scene, like, { leading, towards }, 'Made');
        expect(parseScene(JSON.parse(JSON.stringify(made.scene)))).toMatchObject({ ok: true });
        expect(made.scene.trials).toHaveLength(scene.trials.length + 1);
        expect(scene.trials.map(({ id }) => id)).not.toContain(made.trialId);
      }
    }
  });

  it('is propelled instead of pulled with the other end ahead, and goes up instead of down towards the other end', () => {
    const now = readWorking(scene, like.id);
    const ends = withTrialWorked(scene, like, { leading: other[like.leading], towards }, 'Made');
    expect(readWorking(ends.scene, ends.trialId)).toMatchObject({ propelled: !now?.propelled, way: now?.way });
    const ways = withTrialWorked(scene, like, { leading: like.leading, towards: back[towards] }, 'Made');
    expect(readWorking(ways.scene, ways.trialId)).toMatchObject({ propelled: now?.propelled, way: now?.otherWay });
  });

  it('keeps its places while it goes the same way, and drops them when it is turned round', () => {
    const placed = { ...like, startMm: 1500, finishMm: 9000 };
    const same = withTrialWorked(scene, placed, { leading: other[like.leading], towards }, 'Made');
    expect(same.scene.trials.at(-1)).toMatchObject({ startMm: 1500, finishMm: 9000, orders: like.orders });
    const turned = withTrialWorked(scene, placed, { leading: like.leading, towards: back[towards] }, 'Made');
    expect(turned.scene.trials.at(-1)).not.toHaveProperty('startMm');
    expect(turned.scene.trials.at(-1)?.orders).toEqual([{ atS: 0, setting: runningSetting(like) }]);
  });

  it('is found when the scene has it', () => {
    expect(trialWorked(scene, like, givenWorking(scene, like))).toBe(like);
    const made = withTrialWorked(scene, like, { leading: other[like.leading], towards }, 'Made');
    const wanted = { leading: other[like.leading], towards };
    expect(trialWorked(made.scene, like, wanted)?.train).toBe(like.train);
  });
});

describe('a trial over a route', () => {
  const route = [{ track: like.track ?? '', towards: 'end', toMm: 12_000 } as const];
  const { track: _track, towards: _towards, startMm: _start, finishMm: _finish, ...placeless } = like;
  const over = { ...placeless, id: 'over', route, startMm: 2500 };
  const routed = { ...scene, tour: [], trials: [over] };

  it('turned round runs over the same places from the other end', () => {
    const { scene: made, trialId } = withTrialWorked(routed, over, { leading: like.leading, towards: 'start' }, 'Back');
    const back = made.trials.find(({ id }) => id === trialId);
    expect(back?.route).toEqual([{ track: like.track, towards: 'start', fromMm: 12_000 }]);
    expect(back).not.toHaveProperty('startMm');
    expect(back).not.toHaveProperty('towards');
    expect(parseScene(JSON.parse(JSON.stringify(made)))).toMatchObject({ ok: true });
    expect(readWorking(made, trialId)?.way).toBe(readWorking(routed, 'over')?.otherWay);
  });

  it('is found both ways, and not for a trial on the whole track', () => {
    const { scene: made, trialId } = withTrialWorked(routed, over, { leading: like.leading, towards: 'start' }, 'Back');
    expect(trialWorked(made, over, { leading: like.leading, towards: 'start' })?.id).toBe(trialId);
    expect(trialWorked({ ...made, trials: [...made.trials, like] }, like, givenWorking(scene, like))).toBe(like);
  });
});

describe('the running setting', () => {
  it('is the greatest that is ordered, forward or back', () => {
    const orders = [0.2, -0.6, 0.4, 0].map((setting) => ({ atS: 0, setting }));
    expect(runningSetting({ ...like, orders })).toBe(-0.6);
  });

  it('changes alone: orders at other settings stay, and so do other trials', () => {
    const orders = [
      { atS: 0, setting: 0.5 },
      { atS: 5, setting: 0.2 },
      { atS: 9, setting: 0.5 },
      { atS: 12, setting: 0 },
    ];
    const before = { ...scene, trials: [{ ...like, orders }, ...scene.trials.slice(1)] };
    const after = withSetting(before, like.id, 0.8);
    expect(after.trials[0].orders.map(({ setting }) => setting)).toEqual([0.8, 0.2, 0.8, 0]);
    expect(after.trials.slice(1)).toEqual(scene.trials.slice(1));
    expect(before.trials[0].orders[0].setting).toBe(0.5);
  });
});
