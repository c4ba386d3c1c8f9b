import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asideOf } from '../../../../src/ui/band/section/asideOf.ts';

const stretch = fc
  .record({
    from: fc.integer({ min: 0, max: 500 }),
    length: fc.integer({ min: 10, max: 400 }),
    share: fc.double({ min: 0.05, max: 1, noNaN: true }),
  })
  .map(({ from, length, share }) => ({ from, to: from + length, x: from + length / 2, width: share * length }));

describe('lettering beside a line', () => {
  it('stays in its stretch, is never crossed, and stays where it is while nothing comes near', () => {
    fc.assert(
      fc.property(stretch, fc.double({ min: -50, max: 1000, noNaN: true }), (label, line) => {
        const at = asideOf(label, line);
        if (at === null) {
          // There was no room for it on either side.
          expect(line - label.from).toBeLessThan(label.width + 4);
          expect(label.to - line).toBeLessThan(label.width + 4);
          return;
        }
        expect(at - label.width / 2).toBeGreaterThanOrEqual(label.from - 1e-9);
        expect(at + label.width / 2).toBeLessThanOrEqual(label.to + 1e-9);
        expect(Math.abs(at - line)).toBeGreaterThan(label.width / 2);
        if (Math.abs(label.x - line) > label.width / 2 + 4) expect(at).toBe(label.x);
      }),
    );
  });

  it('stays while there is no line', () => {
    expect(asideOf({ x: 50, width: 20, from: 0, to: 100 }, Number.NaN)).toBe(50);
  });
});
