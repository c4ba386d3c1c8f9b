import { describe, expect, it } from 'vitest';
import { brent } from '../../src/core/math/index.ts';
import { arc, makeTrack, trackPoint } from '../../src/core/track/index.ts';

/** The chord of an arc of `radius` that turns through `degrees`. */
function chord(radius: number, degrees: number): number {
  const element = arc(radius, (degrees * Math.PI) / 180);
  const track = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [element],
    profile: { points: [{ chainage: 0, height: 0 }] },
  });
  const { x, y } = trackPoint(track, track.length);
  return Math.hypot(x, y);
}

describe('degree of curve', () => {
  // NMRA S-8, columns "degree of curve" and prototype radius in feet: a D° curve turns D° on a chord of 100 ft.
  const table = [
    [5, 1146],
    [10, 574],
    [15, 383],
    [20, 288],
    [25, 231],
    [30, 193],
    [35, 166],
    [40, 146],
    [45, 131],
  ] as const;

  it.each(table)('of %i° is a radius of %i ft', (degrees, radius) => {
    expect(Math.round(brent((r) => chord(r, degrees) - 100, 50, 2000))).toBe(radius);
  });

  it('is not the one by 100 ft of arc, which would give 127 ft at 45°', () => {
    expect(arc(127.3, Math.PI / 4).length).toBeCloseTo(100, 1);
    expect(chord(127.3, 45)).toBeLessThan(97.5);
  });
});
