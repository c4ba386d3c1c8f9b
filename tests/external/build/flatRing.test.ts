import { describe, expect, it } from 'vitest';
import { flatRing } from '../../../src/core/build/index.ts';

describe('the flat ring of a helix', () => {
  it('has the curvature of a helix: R/(R² + c²)', () => {
    // Curvature of a helix of radius a and pitch 2πb is a/(a² + b²) (M. P. do Carmo, "Differential Geometry of Curves and Surfaces", 1-5, exercise 1).
    for (const [radius, rise] of [
      [0.6, 0.09],
      [0.438, 0.08],
      [0.36, 0.12],
    ]) {
      const b = rise / (2 * Math.PI);
      expect(1 / flatRing(radius, b / radius).radius).toBeCloseTo(radius / (radius * radius + b * b), 12);
    }
  });

  it('keeps, strip bent up and not stretched, the turning of its own middle within the surface', () => {
    // Not from the formula: the middle of a helicoid is walked in small steps, and what it turns within the surface is summed. On a flat ring that is its angle.
    const [radius, grade] = [0.6, 0.09];
    const c = radius * grade;
    const steps = 20_000;
    const at = (t: number) => [radius * Math.cos(t), radius * Math.sin(t), c * t];
    let turned = 0;
    let length = 0;
    for (let i = 0; i < steps; i++) {
      const t = (2 * Math.PI * (i + 0.5)) / steps;
      const h = Math.PI / steps;
      const [p, q, r] = [at(t - 2 * h), at(t), at(t + 2 * h)];
      const u = q.map((x, k) => x - p[k]);
      const v = r.map((x, k) => x - q[k]);
      // Within the surface, square to the line, lies the level line to the axis.
      const inward = [-Math.cos(t), -Math.sin(t), 0];
      const size = Math.hypot(...u);
      turned += v.reduce((sum, x, k) => sum + (x - u[k]) * inward[k], 0) / size;
      length += size;
    }
    const ring = flatRing(radius, grade);
    // Steps of 1e-4 of a turn: sums good to 1e-7.
    expect(turned).toBeCloseTo(ring.anglePerTurn, 6);
    expect(length / turned).toBeCloseTo(ring.radius, 6);
    // By hand at 9 %: 0.6 m and 4.9 mm; a turn takes 360°/√1.0081 = 358.55°.
    expect(ring.radius).toBeCloseTo(0.60486, 5);
    expect((ring.anglePerTurn * 180) / Math.PI).toBeCloseTo(358.55, 2);
  });
});
