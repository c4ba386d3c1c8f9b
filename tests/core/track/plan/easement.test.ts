import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { easement, easementLengthForShift, trackPoint, transition } from '../../../../src/core/track/index.ts';
import { levelTrack } from '../arbitraryTracks.ts';

const radius = fc.double({ min: 0.2, max: 5, noNaN: true });
const ratio = fc.double({ min: 0.001, max: 3, noNaN: true });

describe('easement', () => {
  it('sets out the same clothoid that the track lays', () => {
    fc.assert(
      fc.property(radius, ratio, (r, lengthByRadius) => {
        const length = lengthByRadius * r;
        const laid = trackPoint(levelTrack(transition(length, 0, 1 / r)), length);
        const set = easement(r, length);
        expect(Math.abs(set.ahead - laid.x)).toBeLessThan(1e-14 * r);
        expect(Math.abs(set.offset - laid.y)).toBeLessThan(1e-14 * r);
        expect(Math.abs(set.angle - laid.heading)).toBeLessThan(1e-14);
        // The circle that meets the end squarely passes `shift` from the straight, abeam of `shiftAt`.
        const centre = [laid.x - r * Math.sin(laid.heading), laid.y + r * Math.cos(laid.heading)];
        expect(Math.abs(set.shiftAt - centre[0])).toBeLessThan(1e-14 * r);
        expect(Math.abs(set.shift - (centre[1] - r))).toBeLessThan(1e-14 * r);
      }),
    );
  });

  it('of 300 mm to 500 mm radius shifts the arc by 7.4759 mm', () => {
    expect(easement(0.5, 0.3).shift).toBeCloseTo(0.0074759, 7);
  });

  it('refuses what is no easement', () => {
    expect(() => easement(0, 0.3)).toThrow(RangeError);
    expect(() => easement(0.5, -0.3)).toThrow(RangeError);
    expect(() => easement(0.5, Math.PI * 0.5)).toThrow(/right angle/);
  });
});

describe('easementLengthForShift', () => {
  it('is the inverse of the shift', () => {
    fc.assert(
      fc.property(radius, fc.double({ min: 0.05, max: 3, noNaN: true }), (r, lengthByRadius) => {
        const length = lengthByRadius * r;
        expect(Math.abs(easementLengthForShift(r, easement(r, length).shift) / length - 1)).toBeLessThan(1e-11);
      }),
    );
    // The shift is rounded to 7e-6 of itself, the length so to half of that: 1e-6 m.
    expect(easementLengthForShift(0.5, 0.0074759)).toBeCloseTo(0.3, 5);
  });

  it('refuses a shift that no easement gives', () => {
    expect(() => easementLengthForShift(0.5, 0)).toThrow(RangeError);
    expect(() => easementLengthForShift(0.5, 0.4)).toThrow(/shifts the arc by 0.4 m/);
    expect(() => easementLengthForShift(-1, 0.01)).toThrow(RangeError);
  });
});
