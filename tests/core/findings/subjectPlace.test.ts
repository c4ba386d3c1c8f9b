import { describe, expect, it } from 'vitest';
import { defaultRunOptions } from '../../../src/core/dynamics/index.ts';
import { subjectChainage } from '../../../src/core/findings/index.ts';
import { settingsAlong } from '../../../src/core/findings/settingsAlong.ts';
import { assessRun } from '../../../src/core/risks/index.ts';
import { along, engine, ramp, van } from './samples.ts';

const train = [van(), van(), engine(), van()];

describe('where a finding’s subject is', () => {
  it.each([false, true])('is what the assessment says, in the scene’s chainage (reversed: %s)', (reversed) => {
    const moment = { force: 0.1, railForce: 0.2, gripLimit: 0.4, demand: 0.2, setting: 0.5, motorLimit: 0.3 };
    const context = along(ramp({ 10: 0.003 }), train, moment, { from: 2, to: 5, step: 0.25, reversed });
    const { length } = context.path.track;
    let compared = 0;
    for (const { risk, subjects, chainages } of assessRun(context)) {
      for (let at = 0; at < chainages.length; at++) {
        const frame = Math.floor(at / subjects);
        const scene = reversed ? length - chainages[at] : chainages[at];
        // Rail against plan over a pivot's reach of 0.15 m, on 2 % and a bump of 3 mm.
        expect(Math.abs(subjectChainage(context, risk, at - frame * subjects, frame) - scene)).toBeLessThan(0.0005);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(100);
  });

  it('stays at the ends of the run beyond them', () => {
    const context = along(ramp({}), train, {}, { from: 2, to: 3, step: 0.25 });
    expect(subjectChainage(context, 'headroom', 0, -3)).toBe(2);
    expect(subjectChainage(context, 'headroom', 0, 99)).toBe(3);
    // The engine is the third vehicle.
    expect(subjectChainage(context, 'stall', 0, 0)).toBe(context.run.chainage[2]);
  });
});

describe('settings along the route', () => {
  // Vehicle 0 goes from 2 m to 3 m, 0.25 m and 20 ms a frame; the leading end is 0.1 m ahead of it.
  const { run } = along(ramp({}), [engine(), van(), engine()], {}, { from: 2, to: 3, step: 0.25 });
  const orders = (list: Parameters<typeof settingsAlong>[0]['script']['orders']) =>
    settingsAlong(
      { script: { start: 2.1, finish: 3, timeLimit: 9, orders: list }, options: defaultRunOptions },
      run,
      0.1,
    );

  it('are those ordered by place, and by time where the train was then', () => {
    const at = orders([
      { when: { time: 0 }, setting: 0.5, ramp: 2 },
      { when: { time: 0.04 }, setting: 0.7, ramp: 0 },
      { when: { chainage: 2.9 }, setting: 0, ramp: 1, vehicle: 2 },
    ]);
    expect(at(2.05)).toEqual([0, 0]);
    expect(at(2.2)).toEqual([0.5, 0.5]);
    expect(at(2.7)).toEqual([0.7, 0.7]);
    expect(at(5)).toEqual([0.7, 0]);
  });

  it('wait for the order before them, and never come where that does not', () => {
    const late = orders([
      { when: { chainage: 2.8 }, setting: 0.5, ramp: 0 },
      { when: { chainage: 2.2 }, setting: 0.9, ramp: 0 },
    ]);
    expect(late(2.5)).toEqual([0, 0]);
    expect(late(2.8)).toEqual([0.9, 0.9]);
    const never = orders([
      { when: { time: 0 }, setting: 0.5, ramp: 0 },
      { when: { time: 60 }, setting: 0.7, ramp: 0 },
      { when: { chainage: 2.5 }, setting: 0.9, ramp: 0 },
    ]);
    expect(never(9)).toEqual([0.5, 0.5]);
  });
});
