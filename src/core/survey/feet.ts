import { brent, hypot } from '../math/index.ts';
import { type Track, trackPoint } from '../track/index.ts';

/** Chainages of the feet, m, and the plan distance between them. */
export interface Feet {
  readonly from: number;
  readonly to: number;
  readonly chord: number;
}

/** Longest way along a curve that is looked over for the second foot, in bases: past that it would stand on another turn. */
const longestWay = 1.5;

/** Feet are placed to a micrometre. */
const placing = 1e-6;

/**
 * Where the two feet of a level or straightedge of length `base` stand on a track, on a line of grade `grade`.
 *
 * On a curve they stand on the chord, so the way between them along the track is longer than the base. Throws RangeError
 * when the curve is so sharp that no chord is as long.
 */
export function feetOf(plan: Track, at: number, anchor: 'centre' | 'start', base: number, grade: number): Feet {
  const chord = base / Math.sqrt(1 + grade * grade);
  const feet = (way: number): [number, number] => (anchor === 'centre' ? [at - way / 2, at + way / 2] : [at, at + way]);
  const short = (way: number): number => {
    const [from, to] = feet(way);
    const a = trackPoint(plan, from);
    const b = trackPoint(plan, to);
    return hypot(b.x - a.x, b.y - a.y) - chord;
  };
  const atStraight = short(chord);
  // Exactly the base on a straight; rounding may leave it a hair short or long.
  if (Math.abs(atStraight) <= placing) {
    const [from, to] = feet(chord);
    return { from, to, chord };
  }
  let way = chord;
  while (short(way) < 0) {
    way *= 1.02;
    if (way > longestWay * chord) {
      throw new RangeError(`a base of ${Math.round(base * 1e3)} mm finds no two places on so sharp a curve`);
    }
  }
  const [from, to] = feet(brent(short, chord, way, placing));
  return { from, to, chord };
}
