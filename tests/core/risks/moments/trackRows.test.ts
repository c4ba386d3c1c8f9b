import { describe, expect, it } from 'vitest';
import { footFrom, layInRows, newFoot } from '../../../../src/core/risks/moments/trackRows.ts';
import { straight } from '../../../../src/core/track/index.ts';
import { sampleTrack } from '../../stock/samples.ts';

/** 3 m eastward, up 30 mm a metre, points 5 mm apart. */
const rising = sampleTrack(
  [straight(3)],
  [
    { chainage: 0, height: 0 },
    { chainage: 3, height: 0.09 },
  ],
);
const rows = layInRows([rising], 0.005);

describe('the foot of a point on a row', () => {
  it('lies square to it, as high as the track is there, found from either side', () => {
    for (const from of [0, 240, 400]) {
      const foot = newFoot();
      footFrom(rows, from, 1.2345, 0.01, foot);
      expect(foot.x).toBeCloseTo(1.2345, 12);
      expect(foot.y).toBeCloseTo(0, 12);
      expect(foot.z).toBeCloseTo(0.037035, 12);
      expect(foot.left).toBeCloseTo(0.01, 12);
      expect(foot.beyond).toBe(false);
    }
  });

  it('is the end of the row for what lies past it, which is said', () => {
    const foot = newFoot();
    footFrom(rows, 590, 3.2, -0.01, foot);
    expect([foot.x, foot.z]).toEqual([expect.closeTo(3, 12), expect.closeTo(0.09, 12)]);
    expect(foot.beyond).toBe(true);
  });
});
