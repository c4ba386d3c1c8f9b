import { describe, expect, it } from 'vitest';
import { leastMass, recommendedCarMass } from '../../../src/core/stock/index.ts';

const inch = 0.0254;
const gramsPerOunce = 28.3495;

describe('NMRA RP-20.1: recommended car weight', () => {
  // Source: worked examples on three club copies of the practice: HO 6 in is 4 oz, HO 5.5 in 3.75 oz, N 3.65 in 1.05 oz (29.7 g).
  it.each([
    { scale: 'HO', inches: 6, ounces: 4, within: 1e-4 },
    { scale: 'HO', inches: 5.5, ounces: 3.75, within: 1e-4 },
    { scale: 'N', inches: 3.65, ounces: 1.05, within: 0.005 },
  ] as const)('$scale, $inches in: $ounces oz', ({ scale, inches, ounces, within }) => {
    const grams = recommendedCarMass(scale, inches * inch) * 1000;
    // Half of the last digit printed, or the ounce rounded to six digits.
    expect(Math.abs(grams / gramsPerOunce - ounces)).toBeLessThan(within);
  });

  it('makes the car behind which 2.5 g of drag is 2.2 % of weight', () => {
    // Source: trainboard.com thread 158542, dynamometer car: 25 g for 10 HO cars on the level; cs.trains.com thread 210709:
    // HO cars roll off at 0.8 % (good) to 2.2 % (worst). A 6 in car of recommended weight joins the two.
    const share = 0.0025 / recommendedCarMass('HO', 6 * inch);
    expect(share).toBeCloseTo(0.022, 3);
  });
});

describe('NEM 302 (2015): least mass over length over buffers', () => {
  it('asks a 202 mm vehicle in 0 to weigh 202 g', () => {
    // Source: a 0-gauge builder's page, quoting a band of 202 to 263 g for 202 mm.
    expect(leastMass('0', 0.202)).toBeCloseTo(0.202, 12);
  });

  it('asks 0.40 g/mm in H0', () => {
    expect(leastMass('H0', 0.3)).toBeCloseTo(0.12, 12);
  });
});
