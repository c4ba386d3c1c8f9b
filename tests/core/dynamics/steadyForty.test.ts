import { describe, expect, it } from 'vitest';
import { agreementOf, forty, steadyForty } from '../../bench/forty.ts';

describe('the quasi-static pass over 40 m with 30 vehicles no two of which are alike', () => {
  const input = forty();

  it('is what it says: all different, on 40 m', () => {
    const { vehicles } = input.train;
    expect(input.path.track.length).toBeCloseTo(40, 9);
    expect(vehicles).toHaveLength(30);
    expect(new Set(vehicles.map(({ bodyLength }) => bodyLength)).size).toBe(30);
    expect(new Set(vehicles.map(({ mass }) => mass)).size).toBe(30);
    expect(new Set(vehicles.map(({ rear }) => rear.coupling.draftStiffness)).size).toBe(30);
    expect(steadyForty(input).outcome).toBe('arrived');
  });

  it('agrees with the full run within 1 % of speed and of force wherever that is steady by its own speeds', () => {
    const { steadyShare, speed, force } = agreementOf(input);
    // Not a place or two: a fifth of the way and more.
    expect(steadyShare).toBeGreaterThan(0.2);
    expect(speed).toBeLessThan(0.01);
    expect(force).toBeLessThan(0.01);
  }, 120_000);
});
