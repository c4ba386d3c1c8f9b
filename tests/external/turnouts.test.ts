import { describe, expect, it } from 'vitest';
import { crossingAngle, crossover, makeTrack, trackPoint, turnout } from '../../src/core/track/index.ts';

/** Old full-size practice: 4 ft 8.5 in gauge, m. */
const gauge = 1.435;

describe('a turnout whose curve runs through the crossing', () => {
  // Railway engineering courses: curve lead from the toe to the nose = G·cot(α/2); a Victorian engineer's pocket-book: lead from the versine,
  // (R + G/2)·(1 - cos α) = G with R the radius of the middle line, so lead² = 2(R + G/2)·G - G².
  const spec = { hand: 'left', gauge, radius: 190, front: 0, heel: 0 } as const;
  const { lead, crossingAngle: angle } = turnout(spec);

  it('has a lead of G·cot(α/2)', () => {
    expect(lead).toBeCloseTo(gauge / Math.tan(angle / 2), 10);
  });

  it('has the lead that the outer rail needs to come a gauge away from its tangent', () => {
    expect(lead * lead).toBeCloseTo(2 * (190 + gauge / 2) * gauge - gauge * gauge, 9);
  });

  it('of the 190 m and 1 in 9 of many railways really crosses at about 1 in 8', () => {
    // 190 m, 1 in 9: straight crossing beyond the curve (common practice, no source). tan α = 1/9 takes 1.17 m of the 1.435.
    expect(1 / Math.tan(angle)).toBeCloseTo(8.11, 1);
    const straightThrough = turnout({ ...spec, crossingAngle: crossingAngle(9, 'right-angle') });
    expect(straightThrough.crossingAngle).toBeCloseTo(Math.atan(1 / 9), 14);
    expect(straightThrough.lead).toBeGreaterThan(lead);
  });
});

describe('crossing numbers', () => {
  it('by right angles and by the middle line', () => {
    // 1 in 8: 7.125° one way and 7.153° the other (arctan 0.125; twice arctan 0.0625).
    expect((crossingAngle(8, 'right-angle') * 180) / Math.PI).toBeCloseTo(7.125, 3);
    expect((crossingAngle(8, 'centre-line') * 180) / Math.PI).toBeCloseTo(7.153, 3);
  });
});

describe('a crossover with 1 in N crossings', () => {
  it('has (D - G)·N - G·√(1 + N²) of track between its noses', () => {
    // Railway engineering textbooks for the straight between the noses of a crossover, measured along the track; from memory.
    const [n, spacing] = [8, 3.4];
    const angle = crossingAngle(n, 'right-angle');
    const spec = { hand: 'left', gauge, radius: 140, crossingAngle: angle, front: 0, heel: 0 } as const;
    const between = crossover(spec, spacing).along - 2 * turnout(spec).lead;
    expect(between).toBeCloseTo((spacing - gauge) * n - gauge * Math.sqrt(1 + n * n), 10);
  });

  it('ends parallel on the other track', () => {
    const spec = {
      hand: 'right',
      gauge: 0.0165,
      radius: 0.9,
      crossingAngle: crossingAngle(6, 'centre-line'),
      front: 0.02,
      heel: 0.01,
    } as const;
    const { elements, along } = crossover(spec, 0.05);
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements,
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const end = trackPoint(track, track.length);
    expect(end.x).toBeCloseTo(along, 14);
    expect(end.y).toBeCloseTo(-0.05, 14);
    expect(end.heading).toBeCloseTo(0, 14);
  });
});
