import { expect, it } from 'vitest';
import { cutPieces, type OnSheet, pieceOutline } from '../../../src/core/build/index.ts';
import { arc, makeTrack, straight, transition } from '../../../src/core/track/index.ts';

it('an outline has its corners within the blank and reaches all four sides', () => {
  const track = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [
      straight(0.7),
      transition(0.3, 0, 1 / 0.6),
      arc(0.6, 1.4),
      transition(0.3, 1 / 0.6, 0),
      transition(0.3, 0, -2),
    ],
    profile: { points: [{ chainage: 0, height: 0 }] },
  });
  const width = 0.07;
  for (const piece of cutPieces(track, width, { length: 2.44, width: 1.22, kerf: 0.003, longest: 0.6 })) {
    for (let which = 0; which < piece.count; which++) {
      const { from, sides } = pieceOutline(piece, width, 0.2, 0.1, which);
      expect(sides.at(-1)?.to).toEqual(from);
      const points: OnSheet[] = [];
      let before = from;
      for (const side of sides) {
        points.push(side.to);
        if ('centre' in side) {
          const [cx, cy] = side.centre;
          // Both ends lie on the arc, and so does its middle, half-way between their directions.
          expect(Math.hypot(before[0] - cx, before[1] - cy)).toBeCloseTo(side.radius, 12);
          expect(Math.hypot(side.to[0] - cx, side.to[1] - cy)).toBeCloseTo(side.radius, 12);
          points.push([cx, cy - side.radius]);
          // Seen with y downwards, clockwise grows the angle.
          const turned = Math.atan2(side.to[1] - cy, side.to[0] - cx) - Math.atan2(before[1] - cy, before[0] - cx);
          expect(Math.sign(turned)).toBe(side.clockwise ? 1 : -1);
        }
        before = side.to;
      }
      const [xs, ys] = [0, 1].map((k) => points.map((point) => point[k]));
      expect(Math.min(...xs)).toBeCloseTo(0.2, 9);
      expect(Math.max(...ys)).toBeLessThan(0.1 + piece.blank.width + 1e-12);
      expect(Math.min(...ys)).toBeGreaterThan(0.1 - 1e-12);
      if (piece.count === 1) expect(Math.max(...xs)).toBeCloseTo(0.2 + piece.blank.length, 9);
      if (piece.shape !== 'sector' && piece.count === 1)
        expect(Math.max(...ys)).toBeCloseTo(0.1 + piece.blank.width, 9);
      if (piece.shape === 'sector') expect(Math.max(...ys)).toBeCloseTo(0.1 + piece.blank.width, 9);
    }
  }
});
