import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { locate, makeBucketIndex } from '../../../src/core/track/bucket.ts';
import { evenly } from '../../evenly.ts';

describe('the bucket index', () => {
  it('finds the piece of a place, the first before the start and the last from its start on', () => {
    const starts = Float64Array.of(0, 1, 1.5, 4);
    const index = makeBucketIndex(starts, 5);
    expect([-1, 0, 0.999, 1, 1.4, 1.5, 3.9, 4, 5, 99].map((s) => locate(index, starts, s))).toEqual([
      0, 0, 0, 1, 1, 2, 2, 3, 3, 3,
    ]);
  });

  it('agrees with looking through all pieces, however unequal they are', () => {
    const gap = fc.oneof(
      fc.double({ min: 1e-9, max: 1e-6, noNaN: true }),
      fc.double({ min: 0.01, max: 9, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(gap, { minLength: 1, maxLength: 60 }), evenly(0, 1), (gaps, f) => {
        const starts = new Float64Array(gaps.length);
        for (let k = 1; k < gaps.length; k++) starts[k] = starts[k - 1] + gaps[k - 1];
        const end = starts[gaps.length - 1] + gaps[gaps.length - 1];
        const index = makeBucketIndex(starts, end);
        for (const s of [f * end, ...starts]) {
          expect(locate(index, starts, s)).toBe(starts.filter((start) => start <= s).length - 1);
        }
      }),
    );
  });

  it('has cells no longer than the shortest piece unless that would make it large', () => {
    expect(makeBucketIndex(Float64Array.of(0, 1, 1.25), 3).cell).toBeLessThanOrEqual(0.25);
    expect(makeBucketIndex(Float64Array.of(0, 1e-9, 1), 3).first.length).toBeLessThan(100);
  });
});
