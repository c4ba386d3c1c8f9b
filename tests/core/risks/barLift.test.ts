import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { Coupling, Vehicle } from '../../../src/core/stock/types.ts';
import { straight, type Track } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial } from './samples.ts';

const risk = riskById('bar-lift');

/** Vertical radius of 10 m over 0.6 m about chainage 2: a sag, or with `up` -1 a summit. */
const curve = (up: 1 | -1): Track =>
  sampleTrack(
    [straight(4)],
    [
      { chainage: 0, height: up * 0.06 },
      { chainage: 2, height: 0, curve: { radius: 10 } },
      { chainage: 4, height: up * 0.06 },
    ],
  );
/** 100 mm between running points, pivots 62 mm from the middle, bars of 20 mm: vehicles 144 mm apart. */
const van = (freeTilt: number | undefined, change: Partial<Vehicle> = {}): Vehicle => {
  const coupling: Partial<Coupling> = freeTilt === undefined ? {} : { kind: 'rigid-bar', freeTilt };
  return sampleVehicle({ pivotSpacing: 0.1, overhang: 0.02, coupling }, change);
};
const lifts = (track: Track, vehicles: readonly Vehicle[], lead: number) => {
  const [series] = assessRun(madeUpTrial(track, vehicles, [{ lead, extension: 0 }]), [risk]);
  return { series, by: [...series.margins].map((margin) => 0.0009 - margin) };
};

/** Lifts are in proportion to levers taken at rail level; pivots 9.9 mm up a radius of 10 m stand 0.1 % nearer or further apart. */
const expectLift = (by: number, expected: number): void => {
  expect(Math.abs(by / expected - 1)).toBeLessThan(0.0015);
};

describe('stiff bars in a sag', () => {
  it('make three vehicles one beam: its ends 194 mm out carry, the middle hangs by (0.194² - 0.05²)/20 = 1.757 mm', () => {
    const { by, series } = lifts(curve(1), [van(0), van(0), van(0)], 2.144);
    expectLift(by[1], 0.0017568);
    // The outer ones hang at their inner ends, 94 mm out: (0.194² - 0.094²)/20.
    expectLift(by[0], 0.00144);
    expectLift(by[2], 0.00144);
    expect(series.worst?.subject).toBe(1);
    expect(series.worst?.governing).toBe('bar');
    expect(series.worst?.range?.[1]).toBeLessThan(0);
  });

  it('make two one beam: the ends 122 mm out carry, the gears 22 mm out hang by 0.72 mm', () => {
    const { by } = lifts(curve(1), [van(0), van(0)], 2.072);
    expectLift(by[0], 0.00072);
    expectLift(by[1], 0.00072);
  });

  it('lift nothing where they may tilt by the 7.2 mrad that the curve asks of either end', () => {
    const { by } = lifts(curve(1), [van(0.00721), van(0.00721), van(0.00721)], 2.144);
    for (const one of by) expect(one).toBe(0);
  });

  it('lift by half where they may tilt by half of it', () => {
    // Angles and lifts are in proportion: what the stops do not allow is half.
    const { by } = lifts(curve(1), [van(0.0036), van(0.0036), van(0.0036)], 2.144);
    expect(by[1]).toBeCloseTo(0.0017568 / 2, 5);
  });

  it('hang the light vehicle and not its heavy neighbours', () => {
    const { by } = lifts(curve(1), [van(0, { mass: 0.4 }), van(0, { mass: 0.02 }), van(0, { mass: 0.4 })], 2.144);
    expect(by[1]).toBeGreaterThan(Math.max(by[0], by[2]));
  });

  it('over a summit rock: the heavy middle one carries, and both ends stand off', () => {
    const { by } = lifts(curve(-1), [van(0, { mass: 0.05 }), van(0, { mass: 0.4 }), van(0, { mass: 0.05 })], 2.144);
    // Beam level on gears 50 mm out, those 194 mm out hang by the same 1.757 mm.
    expect(by[1]).toBeCloseTo(0, 9);
    expectLift(by[0], 0.0017568);
    expectLift(by[2], 0.0017568);
  });
});

describe('couplings that give', () => {
  it('lift nothing, and on an even grade no bar does', () => {
    const context = madeUpTrial(curve(1), [van(undefined), van(undefined)], [{ lead: 2 }]);
    expect(assessRun(context, [risk])).toEqual([]);
    const even = sampleTrack(
      [straight(4)],
      [
        { chainage: 0, height: 0 },
        { chainage: 4, height: 0.1 },
      ],
    );
    expect(assessRun(madeUpTrial(even, [van(0), van(0)], [{ lead: 2 }]), [risk])).toEqual([]);
  });

  it('say nothing of vehicles outside the unit', () => {
    const { series } = lifts(curve(1), [van(0), van(0), van(undefined), van(undefined)], 2.144);
    expect(series.margins[0]).not.toBeNaN();
    expect(series.margins[3]).toBeNaN();
  });
});
