import { inMetres, TrackError } from '../problem.ts';
import { bentStrip } from '../strip/strip.ts';
import type { HeightPieces, MeasuredSpec } from '../types.ts';
import { PieceWriter } from './pieces.ts';

/**
 * The line through measured heights, going on at its end grades: the beam of `bentStrip` with the heights themselves as
 * supports, for a strip is straight when nothing bends it; or straight from height to height, with a break of grade at each.
 * Throws TrackError when there are fewer than two or they do not rise in chainage.
 */
export function measuredLine({ heights, between, hinges }: MeasuredSpec): HeightPieces {
  if (heights.length < 2) {
    throw new TrackError('bad-measured', `A measured profile needs at least two heights, and has ${heights.length}.`);
  }
  heights.forEach(({ chainage, height }, index) => {
    if (!Number.isFinite(chainage + height)) {
      throw new TrackError('bad-measured', `Measured height ${index + 1} needs a finite chainage and height.`);
    }
    if (index > 0 && !(chainage > heights[index - 1].chainage)) {
      const sentence = `Measured heights must rise in chainage: the one at ${inMetres(chainage)} comes after one at ${inMetres(heights[index - 1].chainage)}.`;
      throw new TrackError('bad-measured', sentence, chainage, heights[index - 1].chainage - chainage);
    }
  });
  if (between === 'beam') {
    const supports = heights.map(({ chainage, height }) => ({ chainage, departure: height }));
    return bentStrip({ supports, hinges });
  }
  const line = new PieceWriter();
  for (let i = 0; i + 1 < heights.length; i++) {
    const [from, to] = [heights[i], heights[i + 1]];
    line.add(from.chainage, from.height, (to.height - from.height) / (to.chainage - from.chainage));
  }
  return line.pieces();
}
