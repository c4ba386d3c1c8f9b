import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bentTicks,
  contrastInks,
  forceColours,
  forceShade,
  marginColours,
  marginShade,
  plainInks,
  roundEnd,
} from '../../../../src/ui/band/carpet/colourScales.ts';

describe('the force scale', () => {
  test('a tenth of the greatest force takes more than a quarter of the colours', () => {
    // 0.1^0.55 = 10^-0.55 = 0.2818.
    expect(forceShade(0.06, 0.6)).toBeCloseTo(0.2818, 4);
    expect(forceShade(-0.06, 0.6)).toBeCloseTo(0.2818, 4);
    expect(forceShade(0.6, 0.6)).toBe(1);
    expect(forceShade(9, 0.6)).toBe(1);
  });

  test('its ends are the ends of the two ramps, buff teal and draft ochre', () => {
    const { colour } = forceColours(2, plainInks);
    expect(colour(-2).toLowerCase()).toBe('#0b4f5e');
    expect(colour(2).toLowerCase()).toBe('#744600');
    expect(forceColours(2, contrastInks).colour(-2).toLowerCase()).toBe('#00303b');
    expect(forceColours(2, contrastInks).colour(2).toLowerCase()).toBe('#6b3f00');
  });

  test('no force that is not slack has the colour of slack', () => {
    const { colour } = forceColours(1, plainInks);
    for (let force = -1; force <= 1; force += 0.001) expect(colour(force).toLowerCase()).not.toBe('#bbbdbf');
  });

  test('more force is never lighter', () => {
    const { colour } = forceColours(1, plainInks);
    const light = (hex: string) => [1, 3, 5].reduce((sum, at) => sum + Number.parseInt(hex.slice(at, at + 2), 16), 0);
    const force = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(force, force, (a, b) => {
        const [less, more] = a < b ? [a, b] : [b, a];
        expect(light(colour(more))).toBeLessThanOrEqual(light(colour(less)));
        expect(light(colour(-more - 1e-12))).toBeLessThanOrEqual(light(colour(-less - 1e-12)));
      }),
    );
  });
});

describe('round ends', () => {
  test.each([
    [0.113, 0.12],
    [0.12, 0.12],
    [0.53, 0.6],
    [0.66, 0.8],
    [0.9, 1],
    [1.01, 1.2],
    [37, 40],
    [0.0021, 0.0025],
    [0, 1],
  ])('%d ends at %d', (value, end) => {
    expect(roundEnd(value)).toBe(end);
  });

  test('never below the value and never half as much again', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (value) => {
        const end = roundEnd(value);
        expect(end).toBeGreaterThanOrEqual(value * (1 - 1e-9));
        expect(end).toBeLessThan(value * 1.5);
      }),
    );
  });
});

describe('bent ticks', () => {
  test('are bent like the colours', () => {
    // (1/6)^0.55: ln = -0.55 * 1.791759 = -0.985468, e^ = 0.3733; (1/3)^0.55 = e^-0.604237 = 0.5465.
    const at = (force: number) => bentTicks(0.6, 0.01).find((tick) => tick.force === force)?.at;
    expect(at(0.6)).toBe(1);
    expect(at(0.1)).toBeCloseTo(0.3733, 4);
    expect(at(0.2)).toBeCloseTo(0.5465, 4);
  });

  test('keep their distance, from the end inwards', () => {
    const ticks = bentTicks(0.6, 0.42);
    expect(ticks.map((tick) => tick.force)).toEqual([0.6, 0.2]);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        fc.double({ min: 0.05, max: 0.8, noNaN: true }),
        (greatest, apart) => {
          const found = bentTicks(greatest, apart);
          expect(found[0]).toEqual({ force: greatest, at: 1 });
          for (let k = 1; k < found.length; k++) {
            expect(found[k - 1].at - found[k].at).toBeGreaterThanOrEqual(apart);
            expect(found[k].force).toBeLessThan(found[k - 1].force);
          }
        },
      ),
    );
  });
});

describe('the margin scale', () => {
  test('runs from pale at plenty to dark at nothing', () => {
    const colour = marginColours(0.0015, plainInks);
    expect(colour(0.0015).toLowerCase()).toBe('#f1eee6');
    expect(colour(9).toLowerCase()).toBe('#f1eee6');
    expect(colour(0).toLowerCase()).toBe('#423c32');
    expect(marginShade(0.0005, 0.002)).toBe(0.75);
  });
});
