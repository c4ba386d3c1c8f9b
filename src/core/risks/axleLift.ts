import { axleGap, flangeH0Mm, type Vehicle } from '../stock/index.ts';
import { type TrackPoint, trackPoint } from '../track/index.ts';
import { gradeChanges } from './changingGrade.ts';
import { sayNothing } from './sample.ts';
import type { RiskDefinition } from './types.ts';

/**
 * Lift at which a flange no longer guides, in gauges: 0.6 mm for 16.5 mm gauge. Source: NEM 310 (2009), flange depth D of 0.6 to
 * 1.2 mm in H0, its least: a wheel lifted by that has the tip of its flange level with the rail.
 */
const guidingDepthInGauges = flangeH0Mm.depth[0] / 16.5;

/**
 * Distance from an axle, in wheelbases, within which the centre of mass may come to either side of it: a pull of a fifth of the
 * weight at a drawbar 10 mm up moves the weight by 2 mm, which is that share of a wheelbase of 40 mm.
 */
const rocking = 0.05;

/** Axles of a frame that is rigid over all of them; 0 where none could lift. */
function rigidAxles({ bogies, axles, kind }: Vehicle): number {
  const count = axles ?? (kind === 'locomotive' || kind === 'tender' ? 3 : 2);
  return bogies || count < 3 ? 0 : count;
}

/**
 * Lift of a wheel of a rigid frame of three axles or more off its rail, m, against the depth of flange that guides. The frame stands on
 * the two axles that its centre of mass lies between and no rail pushes through it: the line over the rail heights
 * under its axles that is least high there. In a sag those are the end axles and the middle hangs; on a
 * summit a middle axle carries and an end lifts, twice as far. The rail's own heights count, so breaks of grade do too.
 */
export const axleLift: RiskDefinition = {
  id: 'axle-lift',
  subject: 'vehicle',
  unit: 'length',
  plenty: 0.0005,
  near: 0.00015,
  prepare({ path, train }) {
    const { vehicles } = train;
    const counts = Int32Array.from(vehicles, rigidAxles);
    const most = Math.max(...counts);
    if (most === 0 || !gradeChanges(path.track)) return null;
    /** Rail under each axle above the line through the rail under the end axles, m. */
    const heights = new Float64Array(most);
    const rail: TrackPoint = trackPoint(path.track, 0);
    const lifted: Lifted = { by: 0, end: false };
    return {
      sample(frame, index, out) {
        const count = counts[index];
        if (count === 0) return sayNothing(out);
        const placement = frame.placements[index];
        for (let k = 1; k < count - 1; k++) heights[k] = -axleGap(path.track, placement, k / (count - 1), rail);
        const { massAhead, pivotSpacing, gauge } = vehicles[index];
        const weight = 0.5 + massAhead / pivotSpacing;
        lifted.by = 0;
        lifted.end = false;
        standOn(heights, count, weight - rocking, lifted);
        standOn(heights, count, weight + rocking, lifted);
        out.value = lifted.by;
        out.limit = guidingDepthInGauges * gauge;
        out.margin = out.limit - out.value;
        out.governing = lifted.end ? 'end-axle' : 'middle-axle';
      },
      parts: () => [],
    };
  },
};

/** The wheel furthest off its rail: by how much, m, and whether it is one of an end axle. */
interface Lifted {
  by: number;
  end: boolean;
}

/**
 * Stands a frame with its weight at a share of the way from the rear axle to the front one on the rail under `count` axles, whose first
 * and last heights are 0, and notes in `lifted` any wheel that is further off than what stands there.
 */
function standOn(heights: Float64Array, count: number, weight: number, lifted: Lifted): void {
  const at = Math.min(count - 1, Math.max(0, weight * (count - 1)));
  let behind = 0;
  let ahead = count - 1;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count - 1 && i <= at; i++) {
    for (let j = count - 1; j > i && j >= at; j--) {
      const height = heightAt(heights, i, j, at);
      if (height <= highest) continue;
      highest = height;
      behind = i;
      ahead = j;
    }
  }
  for (let k = 0; k < count; k++) {
    const by = heightAt(heights, behind, ahead, k) - heights[k];
    if (by <= lifted.by) continue;
    lifted.by = by;
    lifted.end = k === 0 || k === count - 1;
  }
}

/** Height at axle number `at` (a fraction between two) of the line through the rails under axles i and j. */
const heightAt = (heights: Float64Array, i: number, j: number, at: number): number =>
  heights[i] + ((heights[j] - heights[i]) * (at - i)) / (j - i);
