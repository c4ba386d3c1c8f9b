import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { timeAtPlace } from '../../../../src/state/index.ts';
import { frameAt, nearestFrame, valueBetween } from '../../../../src/ui/band/frame/motion.ts';

const time = Float64Array.of(0, 1, 2, 3, 4, 5, 6);

describe('moments between frames', () => {
  test('fall where they belong', () => {
    expect(frameAt(time, 2.25)).toEqual({ frame: 2, share: 0.25 });
    expect(frameAt(time, 3)).toEqual({ frame: 3, share: 0 });
    expect(frameAt(time, -1)).toEqual({ frame: 0, share: 0 });
    expect(frameAt(time, 99)).toEqual({ frame: 6, share: 0 });
    expect(nearestFrame({ frame: 2, share: 0.6 })).toBe(3);
    expect(valueBetween(Float64Array.of(10, 20), { frame: 0, share: 0.3 })).toBe(13);
  });

  test('a last frame that comes early is no trouble', () => {
    const uneven = Float64Array.of(0, 0.02, 0.04, 0.045);
    const found = frameAt(uneven, 0.0425);
    expect(found.frame).toBe(2);
    expect(found.share).toBeCloseTo(0.5, 9);
  });
});

describe('the moment at a place', () => {
  // Forward to 2, standing, back to 1, forward to 3.
  const places = Float64Array.of(0, 1, 2, 2, 1, 2, 3);

  test('is on the line between frames', () => {
    expect(timeAtPlace(time, places, 0.5, 0)).toBeCloseTo(0.5, 12);
    expect(timeAtPlace(time, places, 2.75, 0)).toBeCloseTo(5.75, 12);
  });

  test('of several is the one nearest to now', () => {
    expect(timeAtPlace(time, places, 1.5, 1)).toBeCloseTo(1.5, 12);
    expect(timeAtPlace(time, places, 1.5, 3.4)).toBeCloseTo(3.5, 12);
    expect(timeAtPlace(time, places, 1.5, 6)).toBeCloseTo(4.5, 12);
  });

  test('where the train stands there, is as near to now as it stood', () => {
    expect(timeAtPlace(time, places, 2, 2.9)).toBe(3);
  });

  test('a place never reached gives the nearest there was', () => {
    expect(timeAtPlace(time, places, 9, 0)).toBe(6);
    expect(timeAtPlace(time, places, -4, 6)).toBe(0);
  });

  test('going to where the train is at a time comes back to that time', () => {
    const steps = fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(steps, fc.double({ min: 0, max: 6, noNaN: true }), fc.boolean(), (moves, at, backwards) => {
        let place = 0;
        const along = [0];
        for (const step of moves) {
          place += backwards ? -step : step;
          along.push(place);
        }
        const path = Float64Array.from(along);
        expect(timeAtPlace(time, path, valueBetween(path, frameAt(time, at)), 0)).toBeCloseTo(at, 6);
      }),
    );
  });
});
