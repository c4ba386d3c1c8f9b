import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstNotBelow, firstThat, lastNotAbove } from '../../../src/core/math/index.ts';

/** Few different values, so that many of them are equal. */
const rising = fc.array(fc.integer({ min: -4, max: 4 }), { maxLength: 12 }).map((all) => all.sort((a, b) => a - b));
const value = fc.integer({ min: -10, max: 10 }).map((twice) => twice / 2);

describe('halving', () => {
  it('finds the threshold of any range, and its end where nothing holds', () => {
    const whole = fc.integer({ min: -300, max: 300 });
    fc.assert(
      fc.property(whole, fc.nat(200), whole, (from, span, threshold) => {
        const asked: number[] = [];
        const first = firstThat(from, from + span, (number) => {
          asked.push(number);
          return number >= threshold;
        });
        expect(first).toBe([...Array(span).keys()].map((k) => from + k).find((n) => n >= threshold) ?? from + span);
        // Within the range, none twice, and one more than whole halvings at most.
        expect(asked.every((number) => number >= from && number < from + span)).toBe(true);
        expect(new Set(asked).size).toBe(asked.length);
        expect(asked.length).toBeLessThanOrEqual(Math.ceil(Math.log2(span + 1)));
      }),
    );
  });

  it('finds among rising numbers, equal ones too, what looking at each in turn finds', () => {
    fc.assert(
      fc.property(rising, value, (all, at) => {
        const first = all.findIndex((one) => one >= at);
        expect(firstNotBelow(all, at)).toBe(first < 0 ? all.length : first);
        expect(lastNotAbove(all, at)).toBe(all.findLastIndex((one) => one <= at));
        expect(firstNotBelow(Float64Array.from(all), at)).toBe(firstNotBelow(all, at));
      }),
    );
  });

  it('takes the first of equals from below and the last of them from above', () => {
    const steps = [0, 1, 1, 1, 2];
    expect([firstNotBelow(steps, 1), lastNotAbove(steps, 1)]).toEqual([1, 3]);
    expect([firstNotBelow(steps, 3), lastNotAbove(steps, -1)]).toEqual([5, -1]);
    expect([firstNotBelow([], 0), lastNotAbove([], 0)]).toEqual([0, -1]);
  });
});
