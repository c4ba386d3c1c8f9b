import { describe, expect, it } from 'vitest';
import { chainEnd, easement, fillet, reverseBend } from '../../src/core/track/index.ts';

describe('clothoid worked in a total station’s handbook', () => {
  it('parameter 80, length 64 (radius 100) ends 63.348 along and 6.777 off the tangent', () => {
    // User guide of a surveying total station, appendix on road alignments, "Transition coordinates": A = 80, L = 64, τ = 0.32 rad
    // = 18°20′06″; N = 63.348, E = 6.777.
    const { ahead, offset, angle } = easement(6400 / 64, 64);
    expect(ahead).toBeCloseTo(63.348, 3);
    expect(offset).toBeCloseTo(6.777, 3);
    expect(angle).toBeCloseTo(0.32, 12);
  });
});

describe('a spiralled curve by the formulas of a surveying review', () => {
  // Surveying review notes, elements of a spiral curve: Ts = Ls/2 + (R + p)·tan I/2, Es = (R + p)·sec I/2 - R, p = Ls²/24R: first terms of the exact forms.
  const [radius, length, corner] = [2864.79, 250, (30 * Math.PI) / 180];
  const curve = fillet({ radius, easeIn: length, easeOut: length }, corner);
  const p = length ** 2 / (24 * radius);

  it('has its tangent distance within a hundredth of a foot', () => {
    expect(curve.tangentIn).toBeCloseTo(length / 2 + (radius + p) * Math.tan(corner / 2), 1);
    expect(curve.tangentOut).toBeCloseTo(curve.tangentIn, 9);
  });

  it('has its external distance and its central angle less two spiral angles', () => {
    expect(curve.external).toBeCloseTo((radius + p) / Math.cos(corner / 2) - radius, 2);
    expect((curve.arcAngle * 180) / Math.PI).toBeCloseTo(30 - 2 * 2.5, 3);
  });
});

describe('a compound curve set out as two simple ones', () => {
  it('has the tangents of the triangle over the common tangent', () => {
    // Engineering Surveying, 6th edition, 10.3: common tangent R₁·tan Δ₁/2 + R₂·tan Δ₂/2, and the triangle on it gives the rest.
    const [r1, r2, d1, d2] = [200, 120, 0.5, 0.7];
    const common = r1 * Math.tan(d1 / 2) + r2 * Math.tan(d2 / 2);
    const tangentIn = r1 * Math.tan(d1 / 2) + (common * Math.sin(d2)) / Math.sin(d1 + d2);
    const tangentOut = r2 * Math.tan(d2 / 2) + (common * Math.sin(d1)) / Math.sin(d1 + d2);
    const first = fillet({ radius: r1, easeIn: 0, easeOut: 0 }, d1);
    const second = fillet({ radius: r2, easeIn: 0, easeOut: 0 }, d2);
    const end = chainEnd({ x: -tangentIn, y: 0, heading: 0 }, [...(first.elements ?? []), ...(second.elements ?? [])]);
    expect(end.x).toBeCloseTo(tangentOut * Math.cos(d1 + d2), 9);
    expect(end.y).toBeCloseTo(tangentOut * Math.sin(d1 + d2), 9);
  });
});

describe('a reverse curve between parallel lines', () => {
  it('72 ft apart with 500 ft between its intersections turns by asin 72/500', () => {
    // A surveying course's problem: two identical arcs, parallel centrelines 72 ft apart, the line of the intersections 500 ft long
    // and tangent at the point of reversal: sin Δ = 72/500, R·tan Δ/2 = 250.
    const angle = Math.asin(72 / 500);
    const bend = reverseBend(72, 250 / Math.tan(angle / 2), 0, 0);
    expect(bend.angle).toBeCloseTo(angle, 12);
    expect(bend.along).toBeCloseTo(500 + 500 * Math.cos(angle), 8);
  });
});
