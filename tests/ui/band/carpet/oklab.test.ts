import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatHex, fromOklab, mixOklab, parseHex, rampOf, toOklab } from '../../../../src/ui/band/carpet/oklab.ts';

describe('OKLab', () => {
  // sRGB primaries as CSS Color 4 and its test suites print them, five figures.
  test.each([
    ['#ff0000', [0.62796, 0.22486, 0.12585]],
    ['#00ff00', [0.86644, -0.23389, 0.1795]],
    ['#0000ff', [0.45201, -0.03246, -0.31153]],
    ['#ffffff', [1, 0, 0]],
    ['#000000', [0, 0, 0]],
  ])('%s stands where the published conversion puts it', (hex, lab) => {
    const found = toOklab(parseHex(hex));
    for (const [index, part] of lab.entries()) expect(found[index]).toBeCloseTo(part, 4);
  });

  test('every colour comes back from OKLab as it was', () => {
    const part = fc.integer({ min: 0, max: 255 });
    fc.assert(
      fc.property(fc.tuple(part, part, part), (rgb) => {
        const back = fromOklab(toOklab(rgb));
        for (const [index, value] of rgb.entries()) expect(Math.abs(back[index] - value)).toBeLessThan(0.01);
      }),
    );
  });

  test('half way from black to white is half as light, not half the numbers', () => {
    const middle = mixOklab(toOklab([0, 0, 0]), toOklab([255, 255, 255]), 0.5);
    expect(middle[0]).toBeCloseTo(0.5, 6);
    // Lightness 0.5 is a linear light of 0.125, which sRGB writes as 99 of 255.
    expect(formatHex(fromOklab(middle))).toBe('#636363');
  });

  test('a ramp passes through its stops', () => {
    const stops = ['#f4f2eb', '#c3dbda', '#7fb3b8', '#38848f', '#0b4f5e'];
    const ramp = rampOf(stops, 9);
    expect([ramp[0], ramp[2], ramp[4], ramp[6], ramp[8]]).toEqual(stops);
  });

  test('anything but #rrggbb is refused', () => {
    for (const text of ['#fff', 'red', '#12345g', '']) expect(() => parseHex(text)).toThrow(/#rrggbb/);
  });
});
