import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axleLoads, drivenShareOn } from '../../../src/core/stock/index.ts';
import type { CarryingAxle } from '../../../src/core/stock/types.ts';
import { evenly } from '../../evenly.ts';

const axle = (ahead: number, share: number, stiffness = 20_000, driven = true): CarryingAxle => ({
  ahead,
  share,
  stiffness,
  driven,
});
const loadsOn = (axles: readonly CarryingAxle[], rise: readonly number[], weight = 3) =>
  Array.from(axleLoads(axles, weight, rise, new Float64Array(axles.length)));

/** Three axles 30 mm apart with a third of the weight on each. */
const six = [axle(0.03, 1 / 3), axle(0, 1 / 3), axle(-0.03, 1 / 3)];

describe('loads of axles under a frame', () => {
  it('are the level ones on any straight line', () => {
    fc.assert(
      fc.property(evenly(-0.1, 0.1), evenly(-0.5, 0.5), (height, slope) => {
        const loads = loadsOn(
          six,
          six.map(({ ahead }) => height + slope * ahead),
        );
        for (const load of loads) expect(load).toBeCloseTo(1 / 3, 9);
      }),
    );
  });

  it('balance weight and moment, and pull on no rail, whatever the rail does', () => {
    const rise = fc.array(evenly(-0.002, 0.002), { minLength: 4, maxLength: 4 });
    const axles = [axle(0.06, 0.1, 500, false), axle(0.03, 0.35), axle(0, 0.35), axle(-0.04, 0.2)];
    const moment = 0.1 * 0.06 + 0.35 * 0.03 - 0.2 * 0.04;
    fc.assert(
      fc.property(rise, (heights) => {
        const loads = loadsOn(axles, heights);
        for (const load of loads) expect(load).toBeGreaterThanOrEqual(0);
        expect(loads.reduce((sum, load) => sum + load, 0)).toBeCloseTo(1, 9);
        expect(loads.reduce((sum, load, k) => sum + load * axles[k]!.ahead, 0)).toBeCloseTo(moment, 9);
      }),
    );
  });

  it('stand under one straight frame: springs that bear reach from the rail to it, those that hang do not', () => {
    const rise = fc.array(evenly(-0.002, 0.002), { minLength: 5, maxLength: 5 });
    const axles = [axle(0.07, 0.1, 900), axle(0.03, 0.3), axle(0, 0.25), axle(-0.02, 0.15, 9000), axle(-0.05, 0.2)];
    let hung = 0;
    fc.assert(
      fc.property(rise, (heights) => {
        const loads = loadsOn(axles, heights);
        // Height of the top of a spring, its level length taken off: the rail's, less what it is shorter by than on the level.
        const tops = axles.map(({ share, stiffness }, k) => heights[k]! - ((loads[k]! - share) * 3) / stiffness);
        const bearing = axles.flatMap((_, k) => (loads[k]! > 1e-9 ? [k] : []));
        if (bearing.length < 2) return;
        hung += 5 - bearing.length;
        const [first, last] = [bearing[0]!, bearing[bearing.length - 1]!];
        const slope = (tops[first]! - tops[last]!) / (axles[first]!.ahead - axles[last]!.ahead);
        const frame = (k: number) => tops[first]! + slope * (axles[k]!.ahead - axles[first]!.ahead);
        for (let k = 0; k < 5; k++) {
          if (loads[k]! > 1e-9) expect(Math.abs(tops[k]! - frame(k))).toBeLessThan(1e-9);
          else expect(tops[k]!).toBeLessThan(frame(k) + 1e-9);
        }
      }),
    );
    // Not only frames that rest on all five.
    expect(hung).toBeGreaterThan(30);
  });

  it('shift on a small hump by the springs: three like ones give the middle 2/3·k·δ more', () => {
    // Middle raised by δ: the frame heaves δ/3, so the middle spring gains k·(δ - δ/3), each end loses k·δ/3.
    const loads = loadsOn(six, [0, 1e-5, 0]);
    expect(loads[1]).toBeCloseTo(1 / 3 + (2 / 3) * ((20_000 * 1e-5) / 3), 9);
    expect(loads[0]).toBeCloseTo(1 / 3 - (1 / 3) * ((20_000 * 1e-5) / 3), 9);
  });

  it('keep the level shares on soft springs, and leave two axles of a rigid frame to bear it all', () => {
    const hollow = [0, -0.001, 0];
    const soft = six.map((one) => ({ ...one, stiffness: 1 }));
    const stiff = six.map((one) => ({ ...one, stiffness: 1e8 }));
    for (const load of loadsOn(soft, hollow)) expect(load).toBeCloseTo(1 / 3, 3);
    // Over a hollow the middle hangs: a beam on its ends.
    const rigid = loadsOn(stiff, hollow);
    expect(rigid[1]).toBe(0);
    expect(rigid[0]).toBeCloseTo(0.5, 6);
  });

  it('of a rigid frame with its mass off the middle follow the lever of the two axles that carry', () => {
    // Mass 8 mm ahead of the middle axle; over a hump it tips on to middle and front, 30 mm apart: 22/30 and 8/30.
    const shares = [0.4, 0.46666666666666667, 0.13333333333333333];
    const axles = [0.03, 0, -0.03].map((ahead, k) => axle(ahead, shares[k]!, 1e8));
    expect(0.03 * (shares[0]! - shares[2]!)).toBeCloseTo(0.008, 12);
    const loads = loadsOn(axles, [0, 0.001, 0]);
    expect(loads[0]).toBeCloseTo(8 / 30, 5);
    expect(loads[1]).toBeCloseTo(22 / 30, 5);
    expect(loads[2]).toBe(0);
  });

  it('of a rigid frame balanced on a summit are all on its middle axle', () => {
    const stiff = six.map((one) => ({ ...one, stiffness: 1e8 }));
    const loads = loadsOn(stiff, [0, 0.001, 0]);
    expect(loads[1]).toBeCloseTo(1, 9);
    expect(loads[0]! + loads[2]!).toBeCloseTo(0, 9);
  });

  it('of a driven pair lose grip where an idle axle carries in their place', () => {
    // Idle leading axle on a hump 0.1 mm high: unsprung it takes weight off the drivers, sprung softly hardly any.
    const engine = (stiffness: number) => [axle(0.06, 0.2, stiffness, false), axle(0.02, 0.4), axle(-0.02, 0.4)];
    const share = (stiffness: number) => drivenShareOn(engine(stiffness), loadsOn(engine(stiffness), [1e-4, 0, 0]));
    expect(share(20_000)).toBeLessThan(0.95);
    expect(share(200)).toBeGreaterThan(0.99);
    expect(drivenShareOn(engine(200), [0.2, 0.4, 0.4])).toBeCloseTo(1, 12);
  });

  it('grip each by its own wheels: one of two drivers on tyres that hold 2.5 times as well', () => {
    const tyred = { ...axle(-0.02, 0.4), grip: 2.5 };
    const engine = [axle(0.06, 0.2, 20_000, false), axle(0.02, 0.4), tyred];
    // (0.4 + 2.5·0.4)/0.8 on the level; all of their weight on the plain one, all of it on the tyred one.
    expect(drivenShareOn(engine, [0.2, 0.4, 0.4])).toBeCloseTo(1.75, 12);
    expect(drivenShareOn(engine, [0.2, 0.8, 0])).toBeCloseTo(1, 12);
    expect(drivenShareOn(engine, [0.2, 0, 0.8])).toBeCloseTo(2.5, 12);
  });
});
