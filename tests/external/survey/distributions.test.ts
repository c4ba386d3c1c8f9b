import { describe, expect, it } from 'vitest';
import { chiSquareTail, normalQuantile, normalTail } from '../../../src/core/survey/index.ts';

// Percentage points as printed in every table of the normal and the χ² distribution (Abramowitz & Stegun, tables 26.5 and 26.8; written
// down from memory, to the places given).
describe('percentage points', () => {
  it.each([
    [0.05, 1.64485],
    [0.025, 1.95996],
    [0.005, 2.57583],
    [0.0005, 3.29053],
  ])('of the normal distribution: %d above %d', (tail, z) => {
    expect(normalQuantile(tail)).toBeCloseTo(z, 5);
    expect(normalTail(z)).toBeCloseTo(tail, 6);
    expect(normalQuantile(1 - tail)).toBeCloseTo(-z, 5);
  });

  it.each([
    [1, 0.05, 3.84146],
    [2, 0.05, 5.99146],
    [10, 0.05, 18.307],
    [10, 0.95, 3.9403],
    [30, 0.01, 50.8922],
    [100, 0.05, 124.342],
  ])('of χ² with %d degrees of freedom: %d above %d', (degrees, tail, value) => {
    // The table has six figures: at 124.342 half a unit of the last is 4e-6 of probability.
    expect(chiSquareTail(value, degrees)).toBeCloseTo(tail, 4);
  });
});

it('χ² of two degrees of freedom is the exponential distribution', () => {
  for (const value of [0.1, 1, 4, 20]) expect(chiSquareTail(value, 2)).toBeCloseTo(Math.exp(-value / 2), 14);
});
