import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/math/index.ts';
import { advance } from '../../../src/core/math/random.ts';

describe('seededRandom', () => {
  it('steps as the reference implementation of xoshiro128** does from the state 1, 2, 3, 4', () => {
    const state = Uint32Array.of(1, 2, 3, 4);
    const words = Array.from({ length: 8 }, () => advance(state));
    expect(words).toEqual([11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849]);
  });

  it('repeats itself for one seed and differs for another', () => {
    const draw = (seed: number): number[] => {
      const random = seededRandom(seed);
      return Array.from({ length: 20 }, () => random.uniform());
    };
    expect(draw(7)).toEqual(draw(7));
    const seeds = [0, 1, 2, 7, 2 ** 32, 2 ** 32 + 1, 2 ** 53 - 1, -1];
    expect(new Set(seeds.map((seed) => draw(seed)[0])).size).toBe(seeds.length);
  });

  it('spreads evenly: each tenth of [0, 1) gets its share of 100,000 within five standard deviations', () => {
    const random = seededRandom(2024);
    const counts = new Array<number>(10).fill(0);
    for (let i = 0; i < 100_000; i++) counts[Math.floor(random.uniform() * 10)]++;
    // Standard deviation of a count is √(100000·0.1·0.9) = 95.
    for (const count of counts) expect(Math.abs(count - 10_000)).toBeLessThan(475);
  });

  it('draws whole numbers from 0 to count - 1, each of them', () => {
    const random = seededRandom(3);
    const seen = new Set(Array.from({ length: 200 }, () => random.below(6)));
    expect([...seen].sort()).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('draws normals with mean 0, variance 1 and the right share beyond two', () => {
    const random = seededRandom(11);
    const n = 100_000;
    let sum = 0;
    let squares = 0;
    let beyondTwo = 0;
    for (let i = 0; i < n; i++) {
      const x = random.normal();
      sum += x;
      squares += x * x;
      if (Math.abs(x) > 2) beyondTwo++;
    }
    // Five standard errors: 5/√n of the mean, 5·√(2/n) of the variance, 5·√(p(1-p)/n) of the share (4.55 %).
    expect(Math.abs(sum / n)).toBeLessThan(0.016);
    expect(Math.abs(squares / n - 1)).toBeLessThan(0.0224);
    expect(Math.abs(beyondTwo / n - 0.0455)).toBeLessThan(0.0033);
  });

  it('refuses a seed that is not a whole number', () => {
    expect(() => seededRandom(0.5)).toThrow(RangeError);
    expect(() => seededRandom(Number.NaN)).toThrow(RangeError);
  });
});
