import { describe, expect, it } from 'vitest';
import { along, clamp, cross, distance, dot, subtract } from '../../../src/core/math/index.ts';

describe('vectors', () => {
  it('multiply, subtract and measure as in any textbook', () => {
    expect(dot([1, 2, 3], [4, -5, 6])).toBe(12);
    expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
    expect(cross([1, 2, 3], [4, 5, 6])).toEqual([-3, 6, -3]);
    expect(subtract([1, 2, 3], [3, 2, 1])).toEqual([-2, 0, 2]);
    expect(distance([1, 2, 3], [3, 5, 9])).toBe(7);
    expect(along([1, 1, 1], [0, 2, -1], 3)).toEqual([1, 7, -2]);
  });
});

describe('clamp', () => {
  it('holds a value between its bounds and lets NaN through', () => {
    expect([clamp(-3, 0, 2), clamp(1, 0, 2), clamp(5, 0, 2)]).toEqual([0, 1, 2]);
    expect(clamp(Number.NaN, 0, 1)).toBeNaN();
  });
});
