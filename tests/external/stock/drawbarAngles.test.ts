import { describe, expect, it } from 'vitest';
import { jointGeometry, placeVehicle } from '../../../src/core/stock/index.ts';
import { arc } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

describe('a chain of like cars in a curve', () => {
  it('pulls each car inward by 2 F sin(L/2R)', () => {
    // Source: equilibrium of a chain of equal links on a circle; F = 1 N, cars of 280 mm pitch on 600 mm: 0.46244 N.
    const track = sampleTrack([arc(0.6, 3)]);
    const car = sampleVehicle({ pivotSpacing: 0.18, overhang: 0.04 });
    const pitch = 0.28;
    const placed = [1.2, 1.2 - pitch, 1.2 - 2 * pitch].map((s) => placeVehicle(track, car, s));
    const ahead = jointGeometry(car, car, placed[0], placed[1]);
    const behind = jointGeometry(car, car, placed[1], placed[2]);
    // Unit tension along each line of pivots: what the middle car's body feels sideways at its front and at its rear.
    const inward = Math.sin(ahead.swingTrailing) - Math.sin(behind.swingLeading);
    expect(inward).toBeCloseTo(0.46244, 5);
  });
});
