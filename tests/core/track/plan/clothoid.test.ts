import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fresnel, gaussLegendre, integrate } from '../../../../src/core/math/index.ts';
import { arc, trackPoint, transition } from '../../../../src/core/track/index.ts';
import { anyElement, levelTrack } from '../arbitraryTracks.ts';

const rule = gaussLegendre(16);

/** Where a curve ends that starts at the origin along x: its heading integrated in panels of less than 0.4 rad. */
function byQuadrature(length: number, k0: number, k1: number): [x: number, y: number] {
  const heading = (t: number): number => t * (k0 + (t * (k1 - k0)) / (2 * length));
  const panels = Math.ceil((Math.max(Math.abs(k0), Math.abs(k1)) * length) / 0.4) + 1;
  let x = 0;
  let y = 0;
  for (let i = 0; i < panels; i++) {
    const [from, to] = [(i * length) / panels, ((i + 1) * length) / panels];
    x += integrate((t) => Math.cos(heading(t)), from, to, rule);
    y += integrate((t) => Math.sin(heading(t)), from, to, rule);
  }
  return [x, y];
}

/** The same by Fresnel integrals: the square completed at the place where the curvature would be 0. */
function byFresnel(length: number, k0: number, k1: number): [x: number, y: number] {
  const sharpness = Math.abs(k1 - k0) / length;
  const way = Math.sign(k1 - k0);
  const scale = Math.sqrt(Math.PI / sharpness);
  const from = fresnel((way * k0) / Math.sqrt(Math.PI * sharpness));
  const to = fresnel((way * k1) / Math.sqrt(Math.PI * sharpness));
  const turn = (-way * k0 * k0) / (2 * sharpness);
  const [u, v] = [scale * (to.c - from.c), way * scale * (to.s - from.s)];
  return [u * Math.cos(turn) - v * Math.sin(turn), u * Math.sin(turn) + v * Math.cos(turn)];
}

function end(length: number, k0: number, k1: number): [x: number, y: number] {
  const { x, y } = trackPoint(levelTrack(transition(length, k0, k1)), length);
  return [x, y];
}

const apart = ([ax, ay]: [number, number], [bx, by]: [number, number]): number => Math.hypot(ax - bx, ay - by);

describe('clothoids', () => {
  it('end where Fresnel integrals say: entering, leaving, both ends curved, reversing', () => {
    for (const [length, k0, k1] of [
      [0.3, 0, 2],
      [0.3, 2, 0],
      [0.5, 1.5, 3],
      [0.8, 2, -2.5],
      [1.2, -3, -0.5],
      [6, -4, 9],
      [20, 0, 5],
    ] as const) {
      expect(apart(end(length, k0, k1), byFresnel(length, k0, k1))).toBeLessThan(1e-13 * Math.max(1, length));
    }
  });

  it('lose no digits as the curvatures become equal, where the Fresnel form loses them all', () => {
    for (let digits = 1; digits <= 15; digits++) {
      const k1 = 2 + 10 ** -digits;
      expect(apart(end(3, 2, k1), byQuadrature(3, 2, k1))).toBeLessThan(2e-15);
    }
    // With a sharpness of 1e-15 the clothoid is the arc of radius 0.5.
    const circle = levelTrack(arc(0.5, 6));
    const ends = trackPoint(circle, 3);
    expect(apart(end(3, 2, 2 + 1e-15), [ends.x, ends.y])).toBeLessThan(2e-14);
  });

  it('agree with quadrature of the heading everywhere along any element', () => {
    fc.assert(
      fc.property(anyElement, fc.double({ min: 0.01, max: 1, noNaN: true }), (element, fraction) => {
        const s = fraction * element.length;
        const { startCurvature: k0, endCurvature: k1 } = element;
        const { x, y } = trackPoint(levelTrack(element), s);
        const there = byQuadrature(s, k0, k0 + (k1 - k0) * fraction);
        // Headings of up to 25 rad are rounded to 4e-15 and swing a radius of up to 3 m.
        expect(apart([x, y], there)).toBeLessThan(5e-14);
      }),
    );
  });

  it('are continuous from panel to panel', () => {
    const track = levelTrack(transition(5, -6, 8));
    expect(track.plan.panels.x.length).toBeGreaterThan(50);
    const step = track.plan.panels.length[0];
    for (let j = 1; j < track.plan.panels.x.length; j++) {
      const before = trackPoint(track, j * step * (1 - 1e-15));
      const after = trackPoint(track, j * step * (1 + 1e-15));
      expect(apart([before.x, before.y], [after.x, after.y])).toBeLessThan(3e-14);
    }
  });
});
