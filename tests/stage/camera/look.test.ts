import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, dot, subtract, type Vec3 } from '../../../src/core/math/vec3.ts';
import { frameAll, project } from '../../../src/stage/camera/framing.ts';
import {
  between,
  easeInOut,
  eyeDistance,
  eyeOf,
  type Look,
  lookBetween,
  nearestTurn,
  pictureAxes,
} from '../../../src/stage/camera/look.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const place = fc.tuple(number(-3, 3), number(-3, 3), number(0, 1)) as fc.Arbitrary<Vec3>;

describe('look', () => {
  it('has its eye where it was made from', () => {
    fc.assert(
      fc.property(place, place, (eye, target) => {
        fc.pre(distance(eye, target) > 0.05);
        expect(distance(eyeOf(lookBetween(eye, target, 0.6)), eye)).toBeLessThan(1e-9);
      }),
    );
  });

  it('shows its height at the target: 1 m high at 45 degrees up and down is seen from half a metre', () => {
    const look: Look = { target: [0, 0, 0], azimuth: 0, elevation: 0, height: 1, field: Math.PI / 2 };
    expect(eyeDistance(look)).toBeCloseTo(0.5, 12);
    expect(eyeOf(look)[0]).toBeCloseTo(0.5, 12);
    expect(project([0, 0, 0.5], look)[1]).toBeCloseTo(0.5, 12);
  });

  it('has right and up square to the line of sight', () => {
    const look = lookBetween([1, 2, 3], [0.3, 0.1, 0.2], 0.5);
    const { right, up } = pictureAxes(look);
    const sight = subtract(look.target, eyeOf(look));
    for (const axis of [right, up]) expect(dot(axis, sight)).toBeCloseTo(0, 12);
    expect(up[2]).toBeGreaterThan(0);
  });
});

describe('between', () => {
  const a = lookBetween([2, 0, 1], [0, 0, 0], 0.4);
  const b = { ...lookBetween([-1, -2, 0.4], [0.5, 0.5, 0.2], 0.8), azimuth: a.azimuth + 3.3 };

  it('starts at the one and ends at the other', () => {
    expect(distance(eyeOf(between(a, b, 0)), eyeOf(a))).toBeLessThan(1e-12);
    expect(distance(eyeOf(between(a, b, 1)), eyeOf(b))).toBeLessThan(1e-9);
  });

  it('turns the shorter way round', () => {
    const half = between(a, b, 0.5);
    expect(Math.abs(half.azimuth - a.azimuth)).toBeLessThan(Math.PI / 2);
    expect(nearestTurn(7, 0)).toBeCloseTo(7 - 2 * Math.PI, 12);
  });

  it('never comes nearer to its target than at its ends', () => {
    for (let share = 0; share <= 1; share += 0.05) {
      expect(eyeDistance(between(a, b, share))).toBeGreaterThan(0.6 * Math.min(eyeDistance(a), eyeDistance(b)));
    }
  });
});

describe('easeInOut', () => {
  it('starts slow, ends slow, and is half-way at half time', () => {
    expect([easeInOut(0), easeInOut(0.5), easeInOut(1)]).toEqual([0, 0.5, 1]);
    expect(easeInOut(0.1)).toBeLessThan(0.1);
    expect(easeInOut(0.9)).toBeGreaterThan(0.9);
  });
});

describe('frameAll', () => {
  it('keeps everything between the insets and touches two of them', () => {
    const insets = { left: 0.05, right: 0.1, top: 0.15, bottom: 0.12 };
    fc.assert(
      fc.property(fc.array(place, { maxLength: 30 }), number(0, 6), number(0.2, 1.4), (more, azimuth, elevation) => {
        // A square on the ground keeps the picture wider than any thin line of points towards the eye.
        const points: Vec3[] = [...more, [-1, -1, 0], [1, -1, 0], [1, 1, 0], [-1, 1, 0]];
        const aspect = 1.9;
        const look = frameAll(points, { azimuth, elevation, field: 0.42 }, aspect, insets);
        const seen = points.map((point) => project(point, look));
        const x = seen.map(([u]) => u / aspect + 0.5);
        const y = seen.map(([, v]) => v + 0.5);
        const slack = [Math.min(...x) - 0.05, 0.9 - Math.max(...x), Math.min(...y) - 0.12, 0.85 - Math.max(...y)];
        // Rounds of centring end within a thousandth of the picture.
        for (const one of slack) expect(one).toBeGreaterThan(-1e-3);
        expect(Math.min(Math.max(slack[0], slack[1]), Math.max(slack[2], slack[3]))).toBeLessThan(5e-3);
      }),
      { numRuns: 60 },
    );
  });
});
