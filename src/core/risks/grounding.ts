import { firstNotBelow } from '../math/index.ts';
import type { Placement, Vehicle } from '../stock/types.ts';
import { profileCorners } from '../track/index.ts';
import { cornerPassages } from './moments/cornerPassages.ts';
import type { RiskDefinition, Sample } from './types.ts';
import { gradeChanges } from './wheels/changingGrade.ts';
import { curvatureAt } from './wheels/curvatureAt.ts';
import { railRise } from './wheels/railRise.ts';

/**
 * Steps from end to end of a body, besides the corners of the profile under it: on a vertical curve of 5 m radius under a body of
 * 300 mm the height between two places errs by 0.02 mm.
 */
const places = 10;

/**
 * Grounding, m: how far the rail rises towards the underside of a vehicle, against the height of the underside over level rail. Over a
 * summit the middle of the body between the running points comes down to the rail, in a sag the overhangs; at a break of
 * grade the place over it. The body is level across and its underside straight from end to end; the running points stand on the rail. The least since the frame before, at the frames and
 * where a running point or the middle stands on a corner of the profile.
 */
export const grounding: RiskDefinition = {
  id: 'grounding',
  subject: 'vehicle',
  unit: 'length',
  plenty: 0.002,
  near: 0.0005,
  prepare(context) {
    const { track } = context.path;
    if (!gradeChanges(track)) return null;
    const { vehicles } = context.train;
    const breaks = profileCorners(track);
    const passages = cornerPassages(
      context,
      breaks,
      vehicles.map(() => [0, 0.5, 1]),
    );
    /** Takes what one stand of a vehicle leaves under it where that is less than was found before. */
    const worse = (vehicle: Vehicle, placement: Placement, out: Sample): void => {
      const { pivotSpacing, frontOverhang, rearOverhang, underside } = vehicle;
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
      let next = breaks.length === 0 ? 0 : firstNotBelow(breaks, rearChainage + from * span);
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
      const limit = underside * up[2];
      if (limit - rise >= out.margin) return;
      out.value = rise;
      out.limit = limit;
      out.margin = limit - rise;
      out.governing = between ? 'middle' : 'overhang';
    };
    return {
      sample(frame, index, out) {
        out.margin = Number.NaN;
        worse(vehicles[index], frame.placements[index], out);
        const passed = passages.stand(frame, index);
        for (let k = 0; k < passed; k++) worse(vehicles[index], passages.placements[k], out);
      },
      parts: () => [],
    };
  },
};
