import { describe, expect, it } from 'vitest';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import { pathOf, planPoints } from '../../../src/stage/handles/planPath.ts';

const track = makeTrack({
  start: { x: 1, y: 2, heading: 0 },
  elements: [straight(0.05)],
  profile: { points: [{ chainage: 0, height: 0.1 }] },
});

describe('the line of a plan', () => {
  it('has both ends of the track and no two places further apart than 20 mm', () => {
    const points = planPoints(track);
    expect(points[0]).toEqual([1, 2, 0.1]);
    expect(points.at(-1)?.[0]).toBeCloseTo(1.05, 12);
    expect(points).toHaveLength(4);
  });

  it('is drawn without what is out of sight', () => {
    const path = pathOf(
      [
        [0, 0, 0],
        [1, 0, 0],
        [2, 0, 0],
        [3, 0, 0],
      ],
      ([x, y]) => (x === 1 ? null : { x: 10 * x, y }),
    );
    expect(path).toBe('M0.0 0.0M20.0 0.0L30.0 0.0');
  });
});
