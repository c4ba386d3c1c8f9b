import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greatestPassing, leastPassing } from '../../../../src/core/findings/explain/search.ts';

const whole = fc.integer({ min: -5, max: 120 });

describe('the least that passes', () => {
  it('is the threshold, or nothing beyond the end', () => {
    fc.assert(
      fc.property(whole, fc.integer({ min: 0, max: 100 }), (threshold, to) => {
        const least = leastPassing(1, to, (number) => number >= threshold);
        expect(least).toBe(to < 1 || threshold > to ? null : Math.max(1, threshold));
      }),
    );
  });

  it('takes the logarithm of the range in tries: 7 of 64', () => {
    let tries = 0;
    leastPassing(1, 64, (number) => {
      tries++;
      return number >= 40;
    });
    expect(tries).toBeLessThanOrEqual(8);
  });
});

describe('the greatest that passes', () => {
  it('is the threshold from any guess, or nothing below nought', () => {
    fc.assert(
      fc.property(whole, whole, (threshold, guess) => {
        const greatest = greatestPassing(guess, 100, (number) => number <= threshold);
        expect(greatest).toBe(threshold < 0 ? null : Math.min(100, threshold));
      }),
    );
  });

  it('tries nothing much larger than it finds when the guess is good: from 4, and 5 is it, no more than 6', () => {
    const tried: number[] = [];
    greatestPassing(4, 50, (number) => {
      tried.push(number);
      return number <= 5;
    });
    expect(Math.max(...tried)).toBeLessThanOrEqual(7);
  });
});
