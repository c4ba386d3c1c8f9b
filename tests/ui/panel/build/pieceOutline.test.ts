import { expect, it } from 'vitest';
import { cutPieces } from '../../../../src/core/build/index.ts';
import { arc, makeTrack, straight, transition } from '../../../../src/core/track/index.ts';
import { outlineOf } from '../../../../src/ui/panel/build/pieceOutline.ts';

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
      const path = outlineOf(piece, width, 0.2, 0.1, which);
      expect(path).toMatch(/^M[\d. LA]*Z$/);
      const points = path
        .replace(/A\S+ \S+ 0 0 [01] /g, 'L')
        .slice(1, -1)
        .split('L')
        .map((pair) => pair.split(' ').map(Number));
      const [xs, ys] = [0, 1].map((k) => points.map((point) => point[k]));
      // Written to a tenth of a millimetre. A sector's highest place is in the middle of its outer edge, which is no corner.
      expect(Math.min(...xs)).toBeCloseTo(0.2, 3);
      expect(Math.max(...ys)).toBeLessThan(0.1 + piece.blank.width + 1e-4);
      expect(Math.min(...ys)).toBeGreaterThan(0.1 - 1e-4);
      if (piece.count === 1) expect(Math.max(...xs)).toBeCloseTo(0.2 + piece.blank.length, 3);
      if (piece.shape !== 'sector' && piece.count === 1)
        expect(Math.max(...ys)).toBeCloseTo(0.1 + piece.blank.width, 3);
      if (piece.shape === 'sector') expect(Math.max(...ys)).toBeCloseTo(0.1 + piece.blank.width, 3);
    }
  }
});
