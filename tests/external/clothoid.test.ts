import { describe, expect, it } from 'vitest';
import { easement, makeTrack, trackPoint, transition } from '../../src/core/track/index.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

describe('clothoid from straight to R, as set out', () => {
  // Length and radius; end along and off the straight, turning, shift, where the shift is, deflection of the end: mm and
  // degrees. Evaluated from the Fresnel integrals at 40 digits (mpmath), printed to four decimals; so half a ten-thousandth.
  const table = [
    [300, 500, 297.3112, 29.8077, 17.1887, 7.4759, 149.5511, 5.7252],
    [200, 500, 199.2015, 13.2953, 11.4592, 3.3286, 99.8668, 3.8184],
    [360, 600, 356.7735, 35.7692, 17.1887, 8.9711, 179.4613, 5.7252],
    [400, 500, 393.6472, 52.7269, 22.9183, 13.2574, 198.9381, 7.629],
  ] as const;

  it.each(table)('of %f mm to R %f', (lengthMm, radiusMm, x, y, turning, shift, shiftAt, deflection) => {
    const set = easement(radiusMm / 1000, lengthMm / 1000);
    const end = trackPoint(
      makeTrack({
        start: { x: 0, y: 0, heading: 0 },
        elements: [transition(lengthMm / 1000, 0, 1000 / radiusMm)],
        profile: { points: [{ chainage: 0, height: 0 }] },
      }),
      lengthMm / 1000,
    );
    for (const [found, expected] of [
      [end.x * 1000, x],
      [end.y * 1000, y],
      [set.ahead * 1000, x],
      [set.offset * 1000, y],
      [degrees(end.heading), turning],
      [set.shift * 1000, shift],
      [set.shiftAt * 1000, shiftAt],
      [degrees(Math.atan2(end.y, end.x)), deflection],
    ]) {
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(0.51e-4);
    }
  });

  it('deflects its end by a little less than a third of its turning', () => {
    // The handbook's third is the limit of short easements: 400 mm to R 500 has 7.6290°, a third of its turning 7.6394°.
    const { ahead, offset, angle } = easement(0.5, 0.4);
    expect(degrees(angle / 3)).toBeCloseTo(7.6394, 4);
    expect(degrees(Math.atan2(offset, ahead))).toBeCloseTo(7.629, 3);
  });
});

describe('a surveyor’s spiral', () => {
  // Worked spiral of a surveying course (transtutors.com, question 13187416): 2° curve, R 2864.79 ft, spiral 250 ft. The hand
  // formula x = L·(100 - 0.0030462·θ²), L in stations and θ in degrees, and deflection θ/3 are the page's.
  const set = easement(2864.79, 250);

  it('of 250 ft into a 2° curve turns 2.5° and ends 249.9524 ft along and 3.6356 ft off', () => {
    expect(degrees(set.angle)).toBeCloseTo(2.5, 4);
    expect(set.ahead).toBeCloseTo(2.5 * (100 - 0.0030462 * 2.5 ** 2), 4);
    expect(set.ahead).toBeCloseTo(249.9524, 4);
    expect(set.offset).toBeCloseTo(3.6356, 4);
    expect(degrees(Math.atan2(set.offset, set.ahead))).toBeCloseTo(0.8333, 4);
  });

  it('shifts the arc by 0.9090 ft at 124.9921 ft', () => {
    expect(set.shift).toBeCloseTo(0.909, 4);
    expect(set.shiftAt).toBeCloseTo(124.9921, 4);
  });
});
