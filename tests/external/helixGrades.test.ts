import { describe, expect, it } from 'vitest';
import { helix, makeTrack, trackPoint } from '../../src/core/track/index.ts';

/** Grade in per cent of a helix by radius of the track's centreline and rise a turn, in inches. */
function gradeOf(radius: number, rise: number): number {
  const element = helix(radius, 3);
  const track = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [element],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: element.length, height: 3 * rise },
      ],
    },
  });
  const [below, above] = [1, 1 + element.length / 3].map((s) => trackPoint(track, s));
  // One turn on is straight above.
  expect(Math.hypot(above.x - below.x, above.y - below.y)).toBeLessThan(1e-12);
  expect(above.z - below.z).toBeCloseTo(rise, 12);
  return below.grade * 100;
}

describe('helix grades', () => {
  it('of 4 in a turn at 22 in is 2.894 %, and the published 2.65 % belongs to the ring’s edge at 24 in', () => {
    // A builder's published calculation (2016) names 22 in, 4 in and 2.65 %: he took the outer edge for the centreline.
    expect(gradeOf(22, 4)).toBeCloseTo(2.894, 3);
    expect(gradeOf(24, 4)).toBeCloseTo(2.653, 3);
  });

  it('of 3.77 in a turn at 30 in is 2 %, of 3 in a turn at 30 in 1.592 %', () => {
    // cs.trains.com, thread 203620 (30 in, 2 %, 3.77 in a turn); an N-gauge helix of 30 in and 3 in.
    expect(gradeOf(30, 3.77)).toBeCloseTo(2, 3);
    expect(gradeOf(30, 3)).toBeCloseTo(1.592, 3);
  });
});
