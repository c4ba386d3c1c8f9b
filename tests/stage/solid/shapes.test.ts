import { describe, expect, it } from 'vitest';
import { box, circle, drum, prism } from '../../../src/stage/solid/shapes.ts';
import { emptySolid, place } from '../../../src/stage/solid/solid.ts';
import { bounds, enclosedVolume, vertices } from '../samples.ts';

const roles = { top: 0, side: 1, end: 2 };

describe('box', () => {
  it('encloses its volume with all faces outward', () => {
    const solid = emptySolid();
    box(solid, [-1, 2], [0, 4], [1, 1.5], roles, null);
    expect(enclosedVolume(solid)).toBeCloseTo(3 * 4 * 0.5, 12);
  });

  it('inks its twelve edges, each upright once in either direction', () => {
    const solid = emptySolid();
    box(solid, [0, 1], [0, 1], [0, 1], roles, { weight: 1, role: 0 });
    const edges = new Set<string>();
    for (let i = 0; i < solid.strokes.from.length; i += 3) {
      const ends = [solid.strokes.from.slice(i, i + 3).join(), solid.strokes.to.slice(i, i + 3).join()];
      edges.add(ends.sort().join(' to '));
    }
    expect(edges.size).toBe(12);
  });
});

describe('prism', () => {
  it.each(['x', 'y', 'z'] as const)('closes an outline with an inward corner along %s', (axis) => {
    const solid = emptySolid();
    // An L of three unit squares, two units long.
    const outline: [number, number][] = [
      [0, 0],
      [2, 0],
      [2, 1],
      [1, 1],
      [1, 2],
      [0, 2],
    ];
    prism(solid, axis, outline, [3, 5], { flank: () => 0, end: 1 }, null);
    expect(enclosedVolume(solid)).toBeCloseTo(6, 12);
  });

  it('lies between its two places along the axis', () => {
    const solid = emptySolid();
    drum(solid, 'y', [0, 0], 0.5, [-1, 3], 12, { flank: 0, end: 1 }, null);
    const { low, high } = bounds(vertices(solid));
    expect(low[1]).toBe(-1);
    expect(high[1]).toBe(3);
    expect(enclosedVolume(solid)).toBeGreaterThan(0);
  });
});

describe('circle', () => {
  it('puts its corners on the circle', () => {
    for (const [u, v] of circle(2, 9, 1, -1)) expect(Math.hypot(u - 1, v + 1)).toBeCloseTo(2, 12);
  });
});

describe('place', () => {
  it('moves a part and turns it half round about the vertical', () => {
    const part = emptySolid();
    box(part, [1, 2], [0, 1], [0, 1], roles, null);
    const solid = emptySolid();
    place(solid, part, [10, 0, 5], true);
    const { low, high } = bounds(vertices(solid));
    expect(low).toEqual([8, -1, 5]);
    expect(high).toEqual([9, 0, 6]);
    expect(enclosedVolume(solid)).toBeCloseTo(1, 12);
  });
});
