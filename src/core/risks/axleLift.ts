import { axleGap, type Placement, type Vehicle } from '../stock/index.ts';
import { profileCorners, type TrackPoint, trackPoint } from '../track/index.ts';
import { cornerPassages } from './moments/cornerPassages.ts';
import { newSample, sayNothing } from './moments/sample.ts';
import type { RiskDefinition, Sample, Sampler } from './types.ts';
import { gradeChanges } from './wheels/changingGrade.ts';
import { flangeDepth, flangeDepthTolerance } from './wheels/flangeDepth.ts';
import { frameTwist, twistPlay } from './wheels/twistUnloading.ts';

/**
 * Distance from an axle, in wheelbases, within which the centre of mass may come to either side of it: a pull of a fifth of the
 * weight at a drawbar 10 mm up moves the weight by 2 mm, which is that share of a wheelbase of 40 mm.
 */
const rocking = 0.05;

/** Axles of each frame that cannot bend: all of them under a rigid one, its own under a bogie. */
const frameAxles = ({ bogies, bogieAxles, axles, kind }: Vehicle): number =>
  bogies ? (bogieAxles ?? 2) : (axles ?? (kind === 'locomotive' || kind === 'tender' ? 3 : 2));

/** Places of a frame's axles from its rear end axle to its front one, as shares of that way. */
const evenly = (count: number): number[] => Array.from({ length: count }, (_, k) => k / (count - 1));

/** Where axles that may come to a corner stand, as shares of the way from the rear running point to the front one. */
function axlePoints(vehicle: Vehicle): number[] {
  const { bogies, rigidWheelbase, pivotSpacing } = vehicle;
  const count = frameAxles(vehicle);
  if (!bogies) return evenly(count);
  if (count < 3) return [];
  const beyond = evenly(count).map((share) => ((share - 0.5) * rigidWheelbase) / pivotSpacing);
  return [...beyond, ...beyond.map((share) => 1 + share)];
}

/**
 * Lift of a wheel of a rigid frame of three axles or more off its rail, m, against the depth of flange that guides. The frame stands on
 * the two axles that its centre of mass lies between and no rail pushes through it: the line over the rail heights
 * under its axles that is least high there. In a sag those are the end axles and the middle hangs; on a
 * summit a middle axle carries and an end lifts, twice as far. The rail's own heights count, so breaks of grade do too. Where cant runs in or out, one corner
 * of a rigid frame of any number of axles hangs by the twist under it less what the frame takes up. A bogie of three axles is such a frame of its own, with its load
 * at its pivot in the middle; twist is left to its springs. The worst since the frame before, at the frames and where an axle stands on a corner of
 * the profile or an end axle where cant begins or ends to run.
 */
export const axleLift: RiskDefinition = {
  id: 'axle-lift',
  subject: 'vehicle',
  unit: 'length',
  plenty: 0.0005,
  near: 0.00015,
  prepare(context) {
    const { path, train } = context;
    const { track } = path;
    const { vehicles } = train;
    const counts = Int32Array.from(vehicles, frameAxles);
    const most = Math.max(...counts);
    const bends = most > 2 && gradeChanges(track);
    const twists = track.cant !== null && vehicles.some(({ bogies }) => !bogies);
    if (!bends && !twists) return null;
    const corners = twists ? [...(track.cant?.startChainage ?? [])] : [];
    if (bends) corners.push(...profileCorners(track));
    const passages = cornerPassages(context, Float64Array.from(corners).sort(), vehicles.map(axlePoints));
    /** Rail under each axle above the line through the rail under the end axles, m. */
    const heights = new Float64Array(most);
    const rail: TrackPoint = trackPoint(track, 0);
    const lifted: Lifted = { by: 0, end: false };
    const inspected = newSample();
    /** Stands a frame whose weight is at a share of the way from its rear end axle, and takes what that lifts where it is more than was found before. */
    const keep = (count: number, weight: number, out: Sample): void => {
      standOn(heights, count, weight, lifted);
      if (lifted.by <= out.value) return;
      out.value = lifted.by;
      out.governing = lifted.end ? 'end-axle' : 'middle-axle';
    };
    const judgeBogie = (pivotChainage: number, wheelbase: number, count: number, out: Sample): void => {
      const railAt = (share: number): number => trackPoint(track, pivotChainage + (share - 0.5) * wheelbase, rail).z;
      const rear = railAt(0);
      const rise = railAt(1) - rear;
      for (let k = 1; k < count - 1; k++) heights[k] = railAt(k / (count - 1)) - rear - (rise * k) / (count - 1);
      keep(count, 0.5, out);
    };
    const judgeRigid = (vehicle: Vehicle, count: number, placement: Placement, out: Sample): void => {
      const { massAhead, pivotSpacing, gauge } = vehicle;
      if (bends && count > 2) {
        for (let k = 1; k < count - 1; k++) heights[k] = -axleGap(track, placement, k / (count - 1), rail);
        keep(count, 0.5 + massAhead / pivotSpacing, out);
      }
      const corner = frameTwist(vehicle, placement) - twistPlay(gauge);
      if (corner > out.value) {
        out.value = corner;
        out.governing = 'corner';
      }
    };
    const judge = (vehicle: Vehicle, count: number, placement: Placement, out: Sample): void => {
      const { bogies, rigidWheelbase } = vehicle;
      if (bogies) {
        judgeBogie(placement.frontChainage, rigidWheelbase, count, out);
        judgeBogie(placement.rearChainage, rigidWheelbase, count, out);
      } else {
        judgeRigid(vehicle, count, placement, out);
      }
    };
    const sampler: Sampler = {
      sample(frame, index, out) {
        const count = counts[index];
        const vehicle = vehicles[index];
        const lengthwise = bends && count > 2;
        if (!lengthwise && (vehicle.bogies || !twists)) return sayNothing(out);
        out.value = lengthwise ? -1 : 0;
        out.governing = 'corner';
        judge(vehicle, count, frame.placements[index], out);
        const passed = passages.stand(frame, index);
        for (let k = 0; k < passed; k++) judge(vehicle, count, passages.placements[k], out);
        out.limit = flangeDepth(vehicle);
        out.margin = out.limit - out.value;
      },
      parts(frame, index) {
        sampler.sample(frame, index, inspected);
        if (inspected.governing === null) return [];
        return [
          { label: 'track-geometry', value: inspected.value },
          { label: 'tolerance', value: flangeDepthTolerance(vehicles[index]) },
        ];
      },
    };
    return sampler;
  },
};

/** The wheel furthest off its rail: by how much, m, and whether it is one of an end axle. */
interface Lifted {
  by: number;
  end: boolean;
}

/** Lines that dip under a rail by less than this still stand on it, m: rounding. */
const touching = 1e-12;

/**
 * Stands a frame with its weight at a share of the way from the rear axle to the front one on the rail under `count` axles, whose first
 * and last heights are 0, and writes the wheel furthest off its rail. Where it rocks over an axle both ways are looked at.
 */
function standOn(heights: Float64Array, count: number, weight: number, lifted: Lifted): void {
  const last = count - 1;
  const least = Math.min(last, Math.max(0, (weight - rocking) * last));
  const greatest = Math.min(last, Math.max(0, (weight + rocking) * last));
  heights[last] = 0;
  lifted.by = 0;
  lifted.end = false;
  for (let i = 0; i < last && i <= greatest; i++) {
    for (let j = last; j > i && j >= least; j--) {
      let by = 0;
      let furthest = i;
      let lowest = 0;
      for (let k = 0; k < count; k++) {
        const gap = heights[i] + ((heights[j] - heights[i]) * (k - i)) / (j - i) - heights[k];
        if (gap < lowest) lowest = gap;
        if (gap <= by) continue;
        by = gap;
        furthest = k;
      }
      if (lowest < -touching || by <= lifted.by) continue;
      lifted.by = by;
      lifted.end = furthest === 0 || furthest === last;
    }
  }
}
