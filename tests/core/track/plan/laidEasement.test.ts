import { describe, expect, it } from 'vitest';
import { laidEasement, makeTrack, trackPoint } from '../../../../src/core/track/index.ts';

const laid = (kind: 'cubic' | 'lath', length: number, radius: number, pieces?: number) =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: laidEasement(kind, length, radius, pieces),
    profile: { points: [{ chainage: 0, height: 0 }] },
  });

describe('laidEasement', () => {
  it.each([100, 300, 450])('lies on the cubic parabola of %i mm to six micrometres all along', (mm) => {
    const [X, R] = [mm / 1000, 0.6];
    const track = laid('cubic', X, R);
    for (let k = 0; k <= 200; k++) {
      const { x, y } = trackPoint(track, (k / 200) * track.length);
      expect(Math.abs(y - (x * x * x) / (6 * R * X))).toBeLessThan(6e-6);
    }
    const end = trackPoint(track, track.length);
    expect(Math.abs(end.x - X)).toBeLessThan(6e-6);
    // Curvature taken linearly between 33 places of a curve that turns through 0.36 rad at most: 1e-4 rad.
    expect(Math.abs(Math.tan(end.heading) - X / (2 * R))).toBeLessThan(1e-4);
    // The cubic stops short of the radius: (1 + (X/2R)²)^1.5 times as wide.
    expect(1 / end.curvature).toBeCloseTo(R * (1 + (X / (2 * R)) ** 2) ** 1.5, 9);
  });

  it('turns the lath as its moment says, with the radius reached in full', () => {
    const [X, R] = [0.45, 0.6];
    const track = laid('lath', X, R);
    const end = trackPoint(track, track.length);
    expect(Math.abs(end.x - X)).toBeLessThan(6e-6);
    expect(Math.abs(Math.sin(end.heading) - X / (2 * R))).toBeLessThan(1e-5);
    expect(end.curvature).toBeCloseTo(1 / R, 12);
  });

  it('comes nearer with the square of the number of pieces', () => {
    const miss = (pieces: number) => {
      const track = laid('cubic', 0.45, 0.6, pieces);
      return Math.abs(trackPoint(track, track.length).x - 0.45);
    };
    expect(miss(4) / miss(16)).toBeGreaterThan(8);
  });

  it('refuses what cannot be', () => {
    expect(() => laidEasement('lath', 1.3, 0.6)).toThrow(RangeError);
    expect(() => laidEasement('cubic', 0, 0.6)).toThrow(RangeError);
    expect(() => laidEasement('cubic', 0.1, 0.6, 0)).toThrow(RangeError);
  });
});
