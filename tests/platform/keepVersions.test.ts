import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thinnedOut } from '../../src/platform/keepVersions.ts';

describe('thinning versions', () => {
  it('drops nothing while there is room', () => {
    expect(thinnedOut([30, 20, 10], 3)).toEqual([]);
  });

  it('drops the one that is least missed: long ago close neighbours say the same', () => {
    // An hour ago two within a second of each other; lately three a second apart.
    expect(thinnedOut([3_602_000, 3_601_000, 3_600_000, 1000, 500, 0], 5)).toEqual([500]);
  });

  it('keeps the newest and the oldest, and as many as there is room for', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.nat(10_000_000), { minLength: 3, maxLength: 60 }),
        fc.integer({ min: 2, max: 20 }),
        (all, most) => {
          const moments = all.sort((a, b) => b - a);
          const dropped = thinnedOut(moments, most);
          expect(moments.length - dropped.length).toBe(Math.min(most, moments.length));
          expect(dropped).not.toContain(moments[0]);
          expect(dropped).not.toContain(moments.at(-1));
        },
      ),
    );
  });
});
