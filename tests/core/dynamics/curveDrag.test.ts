import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveDragBand, defaultForceModel, forceDefaults, run } from '../../../src/core/dynamics/index.ts';
import { arc, makeTrack, straight, transition } from '../../../src/core/track/index.ts';
import { at, engine, trial, wagon } from './trains.ts';

const car = (rigidWheelbase: number) => wagon(0.1, {}, { rigidWheelbase });

describe('the band of curve drag', () => {
  it('on 508 mm in HO runs from the flat half per cent over the nominal to 32/R', () => {
    // Nominal by hand: 0.2·(0.72·16.5 + 0.47·34)/508 = 1.097 %; 813/508 = 1.600 %.
    const band = curveDragBand(car(0.034), 0.508);
    expect(band.low).toBe(0.005);
    expect(band.nominal).toBeCloseTo(0.01097, 5);
    expect(band.high).toBeCloseTo(0.016, 5);
  });

  it('stands in order on any radius for any wheelbase, falls with radius and is gone on the straight', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 100, noNaN: true }),
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        (radius, wheelbase) => {
          const band = curveDragBand(car(wheelbase), radius);
          const wider = curveDragBand(car(wheelbase), 1.5 * radius);
          expect(band.low).toBeLessThanOrEqual(band.nominal);
          expect(band.nominal).toBeLessThanOrEqual(band.high);
          for (const edge of ['low', 'nominal', 'high'] as const) expect(wider[edge]).toBeLessThanOrEqual(band[edge]);
        },
      ),
    );
    expect(curveDragBand(car(0.034), Number.POSITIVE_INFINITY)).toEqual({ low: 0, nominal: 0, high: 0 });
  });

  it('goes with the gauge where radius and wheelbase do', () => {
    const big = wagon(0.1, {}, { rigidWheelbase: 0.068, gauge: 0.033 });
    expect(curveDragBand(big, 1.2).high).toBeCloseTo(curveDragBand(car(0.034), 0.6).high, 12);
  });

  it('is moved as a whole by the factor, and its nominal by the constants of the form', () => {
    const forces = { ...defaultForceModel, curveFactor: 2 };
    expect(curveDragBand(car(0.034), 0.6, forces).high).toBe(2 * curveDragBand(car(0.034), 0.6).high);
    const gaugeOnly = { ...defaultForceModel, curveWheelbaseFactor: 0 };
    expect(curveDragBand(car(0.034), 0.6, gaugeOnly).nominal).toBeCloseTo((0.2 * 0.72 * 0.0165) / 0.6, 12);
  });

  it('rests on rows that name their source and hold their value between low and high', () => {
    for (const { value, low, high, source } of Object.values(forceDefaults)) {
      expect(low).toBeLessThanOrEqual(value);
      expect(value).toBeLessThanOrEqual(high);
      expect(source.length).toBeGreaterThan(10);
    }
  });

  it.each(['low', 'nominal', 'high'] as const)('is what a run pulls in a curve: %s', (curveDrag) => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1.2), transition(0.3, 0, 1 / 0.6), arc(0.6, 5)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const cars = [0.034, 0.06, 0.034].map(car);
    const result = run(
      trial(track, [engine(0.4), ...cars], [at(0, 0.5, 1)], {
        script: { timeLimit: 14 },
        forces: { curveDrag, flangeFriction: 0 },
      }),
    );
    const share = cars.map((one) => curveDragBand(one, 0.6)[curveDrag]).reduce((sum, drag) => sum + drag, 0);
    const weight = 0.1 * 9.80665;
    expect(result.force[(result.frames - 1) * 3]! / (weight * (3 * 0.015 + share))).toBeCloseTo(1, 3);
  });
});
