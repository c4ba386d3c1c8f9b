import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  between,
  footTicks,
  keepInside,
  pan,
  showsAll,
  tickStep,
  ticksOf,
  valueAt,
  xOf,
  zoom,
} from '../../../../src/ui/band/frame/axis.ts';

const full = { from: 0, to: 18.6 };
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('the shared axis', () => {
  test('lays its span over its pixels', () => {
    const axis = { kind: 'chainage', span: full, width: 864 } as const;
    expect(xOf(axis, 0)).toBe(0);
    expect(xOf(axis, 9.3)).toBeCloseTo(432, 9);
    expect(valueAt(axis, 864)).toBeCloseTo(18.6, 12);
  });

  test('what lies under the pointer stays there while zooming, as far as the ends allow', () => {
    const span = { from: 4, to: 8 };
    const closer = zoom('chainage', span, full, 0.5, 5);
    expect(closer).toEqual({ from: 4.5, to: 6.5 });
    expect(zoom('chainage', span, full, 100, 5)).toEqual(full);
    fc.assert(
      fc.property(share, share, fc.double({ min: 0.2, max: 5, noNaN: true }), (start, about, factor) => {
        const before = { from: start * 14, to: start * 14 + 4 };
        const held = before.from + about * 4;
        const after = zoom('chainage', before, full, factor, held);
        expect(after.from).toBeGreaterThanOrEqual(full.from - 1e-12);
        expect(after.to).toBeLessThanOrEqual(full.to + 1e-12);
        if (after.from > full.from + 1e-9 && after.to < full.to - 1e-9) {
          expect((held - after.from) / (after.to - after.from)).toBeCloseTo(about, 9);
        }
      }),
    );
  });

  test('is not looked at closer than makes sense, and knows when all is on view', () => {
    const closest = zoom('chainage', full, full, 1e-9, 5);
    expect(closest.to - closest.from).toBeCloseTo(0.05, 12);
    expect(between('time', 3, 3, { from: 0, to: 90 })).toEqual({ from: 2.95, to: 3.05 });
    expect(showsAll(full, full)).toBe(true);
    expect(showsAll({ from: 0, to: 18 }, full)).toBe(false);
  });

  test('is pushed no further than its ends', () => {
    expect(pan({ from: 1, to: 3 }, full, -5)).toEqual({ from: 0, to: 2 });
    expect(pan({ from: 1, to: 3 }, full, 50).to).toBe(18.6);
    expect(keepInside({ from: -3, to: 40 }, full)).toBe(full);
  });
});

describe('ticks', () => {
  test('a metre apart on a desk, with no decimals', () => {
    const ticks = ticksOf(full, 864, 34);
    expect(ticks.map((tick) => tick.text)).toEqual(Array.from({ length: 19 }, (_, k) => String(k)));
  });

  test('closer ones carry the decimals they need', () => {
    expect(ticksOf({ from: 8.35, to: 8.45 }, 400, 60).map((tick) => tick.text)).toEqual([
      '8.36',
      '8.38',
      '8.40',
      '8.42',
      '8.44',
    ]);
  });

  test('are 1, 2 or 5 times a power of ten, and far enough apart', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.06, max: 1e4, noNaN: true }),
        fc.integer({ min: 80, max: 3000 }),
        (length, width) => {
          const step = tickStep({ from: 0, to: length }, width, 34);
          const figure = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
          expect([1, 2, 5].some((one) => Math.abs(figure - one) < 1e-9)).toBe(true);
          expect((step / length) * width).toBeGreaterThanOrEqual(34 * (1 - 1e-9));
          // The next smaller step would be too close.
          expect((step / 2.5 / length) * width).toBeLessThan(34);
        },
      ),
    );
  });

  test('in feet and inches they are what a tape is marked with', () => {
    const metre = 1 / 0.3048;
    expect(footTicks({ from: 0, to: 20 / metre }, 400, 44).map((tick) => tick.text)).toEqual([
      '0',
      '5′',
      '10′',
      '15′',
      '20′',
    ]);
    const close = footTicks({ from: 2 * 0.3048, to: 3 * 0.3048 }, 400, 44);
    expect(close.map((tick) => tick.text)).toEqual(['2′', '2′ 3″', '2′ 6″', '2′ 9″', '3′']);
    expect(close[2].value).toBeCloseTo(0.762, 12);
  });
});
