import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cross, distance, dot, subtract } from '../../../src/core/math/vec3.ts';
import { headPlaces, lensFrame } from '../../../src/stage/lens/lensFrame.ts';
import { LensMotion } from '../../../src/stage/lens/lensMotion.ts';
import { growing, lensCircle, shiftForLens, tangents } from '../../../src/stage/lens/lensPlace.ts';
import { bufferedWagon, standing, windingTrack } from '../samples.ts';

const vehicles = [bufferedWagon(0.0005), bufferedWagon()];
const [placedLeading, placedTrailing] = standing(windingTrack(), vehicles, 1.4);
const subject = { leading: vehicles[0], trailing: vehicles[1], placedLeading, placedTrailing };
const depth = 0.05;

describe('lensFrame', () => {
  it.each([
    ['side', 1],
    ['side', -1],
    ['above', 1],
    ['above', -1],
    ['along', 1],
  ] as const)('%s from %d has square axes, right-handed towards the eye', (view, side) => {
    const { right, up, towards } = lensFrame(subject, view, side, 0.0165, depth);
    expect(distance(cross(right, up), towards)).toBeLessThan(1e-12);
  });

  it('shows the train going left from its left side and right from its right', () => {
    const ahead = placedLeading.ahead;
    expect(dot(lensFrame(subject, 'side', 1, 0.0165, depth).right, ahead)).toBeLessThan(-0.9);
    expect(dot(lensFrame(subject, 'side', -1, 0.0165, depth).right, ahead)).toBeGreaterThan(0.9);
  });

  it.each(['side', 'above', 'along'] as const)('%s has both heads in the picture and before its far end', (view) => {
    const frame = lensFrame(subject, view, 1, 0.0165, depth);
    for (const head of Object.values(headPlaces(subject))) {
      const from = subtract(head, frame.centre);
      expect(Math.hypot(dot(from, frame.right), dot(from, frame.up))).toBeLessThan(0.5 * frame.radius);
      const near = dot(from, frame.towards);
      expect(near).toBeLessThan(frame.before);
      expect(near).toBeGreaterThan(-frame.behind);
    }
  });

  it('cuts above the buffers, and behind the trailing pivot along the train', () => {
    const above = lensFrame(subject, 'above', 1, 0.0165, depth);
    const buffers = vehicles[0].rear.buffers;
    // Buffer tops are 14.2 mm above the rail, heads 9.25 mm in the middle of the two.
    expect(above.before).toBeGreaterThan((buffers?.height ?? 0) + 0.002 - 0.00925);
    const along = lensFrame(subject, 'along', 1, 0.0165, depth);
    expect(along.before).toBeGreaterThan(vehicles[1].front.coupling.reach);
  });
});

describe('lensCircle', () => {
  it('lies inside the stage, whatever its size', () => {
    fc.assert(
      fc.property(fc.integer({ min: 300, max: 3000 }), fc.integer({ min: 200, max: 2000 }), (width, height) => {
        const { x, y, radius } = lensCircle(width, height);
        expect(x - radius).toBeGreaterThanOrEqual(0);
        expect(x + radius).toBeLessThanOrEqual(width);
        expect(y - radius).toBeGreaterThanOrEqual(0);
        expect(y + radius).toBeLessThanOrEqual(height);
      }),
    );
  });

  it('leaves the joint beside it', () => {
    const lens = lensCircle(737, 388);
    for (const ring of [50, 300, 600, 720]) {
      expect(ring - shiftForLens(ring, lens)).toBeLessThan(lens.x - lens.radius);
    }
    expect(shiftForLens(50, lens)).toBe(0);
  });
});

describe('tangents', () => {
  it('touch both circles and meet each radius square', () => {
    const a = { x: 100, y: 120, radius: 10 };
    const b = { x: 530, y: 190, radius: 180 };
    const lines = tangents(a, b);
    expect(lines).toHaveLength(2);
    for (const [x1, y1, x2, y2] of lines) {
      expect(Math.hypot(x1 - a.x, y1 - a.y)).toBeCloseTo(10, 9);
      expect(Math.hypot(x2 - b.x, y2 - b.y)).toBeCloseTo(180, 9);
      expect((x2 - x1) * (x1 - a.x) + (y2 - y1) * (y1 - a.y)).toBeCloseTo(0, 6);
      expect((x2 - x1) * (x2 - b.x) + (y2 - y1) * (y2 - b.y)).toBeCloseTo(0, 6);
    }
  });

  it('are none while the ring lies inside the lens', () => {
    expect(tangents({ x: 500, y: 200, radius: 10 }, { x: 530, y: 190, radius: 180 })).toEqual([]);
  });
});

describe('growing', () => {
  it('goes from the ring to the lens', () => {
    const ring = { x: 10, y: 20, radius: 10 };
    const open = { x: 110, y: 40, radius: 100 };
    expect(growing(ring, open, 0)).toEqual(ring);
    expect(growing(ring, open, 1)).toEqual(open);
    expect(growing(ring, open, 0.5)).toEqual({ x: 60, y: 30, radius: 55 });
  });
});

describe('LensMotion', () => {
  it('opens in 160 ms and shuts from where it is', () => {
    const motion = new LensMotion();
    expect(motion.share(0)).toBe(0);
    expect(motion.turn(true, 1000, false)).toBe(true);
    expect(motion.moving(1000)).toBe(true);
    expect(motion.share(1160)).toBe(1);
    expect(motion.moving(1160)).toBe(false);
    const half = motion.share(1050);
    motion.turn(false, 1050, false);
    expect(motion.share(1050)).toBeCloseTo(half, 12);
    expect(motion.share(1300)).toBe(0);
  });

  it('cuts when asked to', () => {
    const motion = new LensMotion();
    motion.turn(true, 5, true);
    expect(motion.share(5)).toBe(1);
    expect(motion.turn(true, 6, true)).toBe(false);
  });
});
