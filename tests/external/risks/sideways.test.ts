import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext, RiskId } from '../../../src/core/risks/types.ts';
import { nadalQuotient } from '../../../src/core/risks/wheels/nadal.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, type Track } from '../../../src/core/track/index.ts';
import { madeUpTrial } from '../../core/risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

describe('Nadal’s limit', () => {
  // Source: table of (tan δ - μ)/(1 + μ·tan δ), the form given throughout the literature on derailment; printed to three places.
  const frictions = [0.1, 0.2, 0.25, 0.3, 0.4, 0.5];
  it.each([
    [60, [1.391, 1.138, 1.034, 0.942, 0.787, 0.66]],
    [65, [1.683, 1.361, 1.233, 1.122, 0.939, 0.794]],
    [70, [2.077, 1.644, 1.481, 1.342, 1.118, 0.947]],
    [75, [2.645, 2.022, 1.801, 1.619, 1.337, 1.128]],
  ])('for a flange of %i°', (degrees, row) => {
    frictions.forEach((friction, column) => {
      expect(Math.abs(nadalQuotient((degrees * Math.PI) / 180, friction) - row[column])).toBeLessThan(0.00051);
    });
  });
});

/** A train standing in a curve, every joint pulled with the same force, the middles of its vehicles `pitch` (m) apart where given. */
function pulled(track: Track, vehicles: readonly Vehicle[], force: number, pitch?: number): RiskContext {
  const speed = vehicles.map(() => 0);
  const context = madeUpTrial(track, vehicles, [{ lead: 2, force, extension: 0, speed }]);
  if (pitch !== undefined) for (let i = 0; i < vehicles.length; i++) context.run.chainage[i] = 2 - i * pitch;
  return context;
}
const marginsOf = (id: RiskId, context: RiskContext) => assessRun(context, [riskById(id)])[0].margins;

describe('a chain of like cars on an arc', () => {
  // Source: equilibrium of a chain of equal links: 2·F·sin(L/2R) = 0.46244 N for 1 N, 280 mm on 600 mm. The car weighs 1.176798 N and tips at coupler height with × 8.75/9.9.
  const track = sampleTrack([arc(0.6, 4)]);
  const car = sampleVehicle({ pivotSpacing: 0.18, overhang: 0.04, coupling: { reach: 0.018 } });
  const middle = (force: number) => marginsOf('string-lining', pulled(track, [car, car, car], force, 0.28))[1];

  it('pulls each of them in by 2·F·sin(L/2R)', () => {
    expect((1 - middle(1)) * ((1.176798 * 8.75) / 9.9)).toBeCloseTo(0.46244, 5);
  });

  it('tips them at a tension of weight × (s/2)/h × R/L', () => {
    // Common practice, no source: s/2 = 8.75 mm, h = 9.9 mm for H0; it puts the angle for its sine, which is 0.9 % here.
    const tension = ((1.176798 * 8.75) / 9.9) * (0.6 / 0.28);
    expect(Math.abs(middle(tension))).toBeLessThan(0.0095);
    expect(middle(1.02 * tension)).toBeLessThan(0);
  });
});

describe('long cars coupled to short ones', () => {
  // Source of the direction: full-size study of an 85 ft car between cars of 31 ft as the case of reference (AAR MR-435), and the marshalling rule that keeps cars of 80 ft and more
  // away from those under 45 ft. Common practice, no source for the amount. Same weight for each foot of length, 1:87.
  const long = sampleVehicle(
    { pivotSpacing: 0.208, overhang: 0.045, coupling: { pivotInset: 0.012, reach: 0.014 } },
    { mass: 0.17 },
  );
  const short = sampleVehicle(
    { pivotSpacing: 0.062, overhang: 0.023, coupling: { pivotInset: 0.012, reach: 0.014 } },
    { mass: 0.062 },
  );
  const track = sampleTrack([arc(0.6, 4)]);
  const least = (id: RiskId, vehicles: readonly Vehicle[], force: number): number =>
    Math.min(...marginsOf(id, pulled(track, vehicles, force)).filter((margin) => !Number.isNaN(margin)));

  it.each(['wheel-climb', 'jack-knife'] as const)('are worse than either among their like: %s', (id) => {
    const force = id === 'jack-knife' ? -0.6 : 0.6;
    const mixed = least(id, [short, long, short], force);
    expect(mixed).toBeLessThan(least(id, [long, long, long], force));
    expect(mixed).toBeLessThan(least(id, [short, short, short], force));
  });
});
