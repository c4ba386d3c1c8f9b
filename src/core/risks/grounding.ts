import { gradeBreaks } from '../track/index.ts';
import { gradeChanges } from './changingGrade.ts';
import { curvatureAt } from './curvatureAt.ts';
import { railRise } from './railRise.ts';
import type { RiskDefinition } from './types.ts';

/**
 * Steps from end to end of a body, besides the breaks of grade under it: on a vertical curve of 5 m radius under a body of
 * 300 mm the height between two places errs by 0.02 mm.
 */
const places = 10;

/**
 * Grounding, m: how far the rail rises towards the underside of a vehicle, against the height of the underside over level rail. Over a
 * summit the middle of the body between the running points comes down to the rail, in a sag the overhangs; at a break of
 * grade the place over it. The body is level across and its underside straight from end to end; the running points stand on the rail.
 */
export const grounding: RiskDefinition = {
  id: 'grounding',
  subject: 'vehicle',
  unit: 'length',
  plenty: 0.002,
  near: 0.0005,
  prepare({ path, train }) {
    const { track } = path;
    if (!gradeChanges(track)) return null;
    const { vehicles } = train;
    const breaks = Float64Array.from(gradeBreaks(track), ({ chainage }) => chainage);
    return {
      sample(frame, index, out) {
        const { pivotSpacing, frontOverhang, rearOverhang, underside } = vehicles[index];
        const placement = frame.placements[index];
        const { frontChainage, rearChainage, up } = placement;
        const front = curvatureAt(track, frontChainage);
        const rear = curvatureAt(track, rearChainage);
        const bend = (front * front + rear * rear) / 2;
        const from = -rearOverhang / pivotSpacing;
        const to = 1 + frontOverhang / pivotSpacing;
        const span = frontChainage - rearChainage;
        // Under the running points the rail is where it is on the level.
        let rise = 0;
        let between = true;
        let next = breaks.length === 0 ? 0 : firstBeyond(breaks, rearChainage + from * span);
        for (let k = 0; ; k++) {
          let share: number;
          if (k <= places) {
            share = from + ((to - from) * k) / places;
          } else {
            if (next >= breaks.length || breaks[next] > rearChainage + to * span) break;
            share = (breaks[next] - rearChainage) / span;
            next++;
          }
          const height = railRise(track, placement, pivotSpacing, share, bend);
          if (height <= rise) continue;
          rise = height;
          between = share > 0 && share < 1;
        }
        out.value = rise;
        out.limit = underside * up[2];
        out.margin = out.limit - rise;
        out.governing = between ? 'middle' : 'overhang';
      },
      parts: () => [],
    };
  },
};

/** Index of the first of some rising numbers that is not below `least`. */
function firstBeyond(rising: Float64Array, least: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle] < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
