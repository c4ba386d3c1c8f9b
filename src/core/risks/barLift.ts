import { couplerPivot, jointGeometry, newJointGeometry, newPlacement, placeVehicle } from '../stock/index.ts';
import type { Vehicle } from '../stock/types.ts';
import { profileCorners } from '../track/index.ts';
import { standardGravity } from '../units/index.ts';
import { leastEnergyLifts } from './barStatics.ts';
import { chainageBetween, cornerPassages } from './moments/cornerPassages.ts';
import { jointLoads } from './moments/jointLoads.ts';
import { sayNothing } from './moments/sample.ts';
import type { Frame, RiskContext, RiskDefinition } from './types.ts';
import { gradeChanges } from './wheels/changingGrade.ts';
import { flangeDepth, flangeDepthTolerance } from './wheels/flangeDepth.ts';

/** A stop: an end of a bar that tilts in its vehicle no further than it may. */
interface Stop {
  readonly vehicle: number;
  readonly joint: number;
  readonly most: number;
}

/** Vehicles that bars hold to each other: from the first to the last, with every stop between them. */
interface Unit {
  readonly first: number;
  readonly last: number;
  readonly stops: readonly Stop[];
}

function unitsOf({ train: { vehicles } }: RiskContext): Unit[] {
  const units: { first: number; last: number; stops: Stop[] }[] = [];
  for (let j = 0; j + 1 < vehicles.length; j++) {
    const stops: Stop[] = [];
    const leading = vehicles[j].rear.coupling.freeTilt;
    const trailing = vehicles[j + 1].front.coupling.freeTilt;
    if (leading !== undefined) stops.push({ vehicle: j, joint: j, most: leading });
    if (trailing !== undefined) stops.push({ vehicle: j + 1, joint: j, most: trailing });
    if (stops.length === 0) continue;
    const before = units.at(-1);
    if (before !== undefined && before.last === j) {
      before.last = j + 1;
      before.stops.push(...stops);
    } else {
      units.push({ first: j, last: j + 1, stops });
    }
  }
  return units;
}

/**
 * Vehicles lifted by their coupling bars, m: how far a running gear hangs off the rail, against the depth of flange that guides. A bar that tilts in a vehicle's end
 * only so far makes the vehicles it joins one stiff beam beyond that; in a dip the beam spans it and what is in its middle hangs, over a summit it rocks. The vehicles
 * rest where their weight lies lowest with no wheel below the rail and no bar past its stops. Small angles; the bars do not bend. The worst since the frame before, at the frames and where a
 * running point of the unit stands on a corner of the profile.
 */
export const barLift: RiskDefinition = {
  id: 'bar-lift',
  subject: 'vehicle',
  unit: 'length',
  plenty: 0.0005,
  near: 0.00015,
  prepare(context) {
    const { path, run } = context;
    const { vehicles } = context.train;
    const units = unitsOf(context);
    if (units.length === 0 || !gradeChanges(path.track)) return null;
    const loads = jointLoads(context);
    const unitOf = vehicles.map((_, i) => units.findIndex((unit) => i >= unit.first && i <= unit.last));
    const lifts = new Float64Array(2 * vehicles.length);
    const lifted = new Float64Array(2 * vehicles.length);
    const passages = cornerPassages(
      context,
      profileCorners(path.track),
      vehicles.map(() => [0, 1]),
    );
    const shares: number[] = [];
    const between: Frame = {
      index: 0,
      placements: vehicles.map(() => newPlacement()),
      joints: vehicles.slice(1).map(() => newJointGeometry()),
    };
    const solved: { frame: Frame | null; index: number } = { frame: null, index: -1 };

    const solve = (frame: Frame): void => {
      // The same frame object is posed anew: its index tells which it is.
      if (solved.frame === frame && solved.index === frame.index) return;
      solved.frame = frame;
      solved.index = frame.index;
      lifts.fill(0);
      for (const unit of units) {
        const { first, last } = unit;
        const coupled = (joint: number): boolean => loads.coupled(frame.index, joint);
        liftUnit(unit, frame, vehicles, coupled, lifts);
        let passed = 0;
        for (let i = first; i <= last; i++) passed = passages.find(frame, i, shares, passed);
        for (let k = 0; k < passed; k++) {
          poseUnit(unit, frame.index, shares[k]);
          lifted.fill(0);
          liftUnit(unit, between, vehicles, coupled, lifted);
          for (let g = 2 * first; g <= 2 * last + 1; g++) lifts[g] = Math.max(lifts[g], lifted[g]);
        }
      }
    };
    /** Poses the vehicles of a unit at a share of the way from the frame before to a frame. */
    const poseUnit = ({ first, last }: Unit, frame: number, share: number): void => {
      const { placements, joints } = between;
      for (let i = first; i <= last; i++) {
        placeVehicle(path.track, vehicles[i], chainageBetween(run, frame, i, share), placements[i]);
        if (i > first) jointGeometry(vehicles[i - 1], vehicles[i], placements[i - 1], placements[i], joints[i - 1]);
      }
    };
    return {
      sample(frame, index, out) {
        if (unitOf[index] < 0) return sayNothing(out);
        solve(frame);
        out.value = Math.max(lifts[2 * index], lifts[2 * index + 1]);
        out.limit = flangeDepth(vehicles[index]);
        out.margin = out.limit - out.value;
        out.governing = 'bar';
      },
      parts(frame, index) {
        if (unitOf[index] < 0) return [];
        solve(frame);
        return [
          { label: 'track-geometry', value: Math.max(lifts[2 * index], lifts[2 * index + 1]) },
          { label: 'tolerance', value: flangeDepthTolerance(vehicles[index]) },
        ];
      },
    };
  },
};

/** Angles closer to a stop than this are at it, rad: rounding of placements. */
const touching = 1e-9;

/** Writes how far the running gears of a unit's vehicles hang: front and rear of each, m. */
function liftUnit(
  { first, last, stops }: Unit,
  { joints, placements }: Frame,
  vehicles: readonly Vehicle[],
  coupled: (joint: number) => boolean,
  lifts: Float64Array,
): void {
  const holding = stops.filter(({ joint }) => coupled(joint));
  const tilt = ({ joint, vehicle }: Stop): number => joints[joint].rise - placements[vehicle].ahead[2];
  if (holding.every((stop) => Math.abs(tilt(stop)) <= stop.most + touching)) return;
  const count = 2 * (last - first + 1);
  const weights: number[] = [];
  for (let i = first; i <= last; i++) {
    const { mass, massAhead, pivotSpacing } = vehicles[i];
    const front = clampShare(0.5 + massAhead / pivotSpacing);
    weights.push(mass * standardGravity * front, mass * standardGravity * (1 - front));
  }
  const rows: number[][] = [];
  const least: number[] = [];
  for (const stop of holding) {
    const turned = tiltByLifts(stop, first, count, vehicles, joints[stop.joint].pinDistance);
    const now = tilt(stop);
    rows.push(turned);
    least.push(-stop.most - now);
    rows.push(turned.map((value) => -value));
    least.push(now - stop.most);
  }
  const found = leastEnergyLifts(weights, rows, least);
  for (let k = 0; k < count; k++) lifts[2 * first + k] = found[k];
}

/** A mass beyond its running gear rests on the nearer one alone: a gear that gains by rising has no least energy. */
const clampShare = (share: number): number => Math.min(1, Math.max(0, share));

/** What a bar's tilt in one of its vehicles (rad) changes by for each metre that each running gear is lifted. */
function tiltByLifts(
  { vehicle, joint }: Stop,
  first: number,
  count: number,
  vehicles: readonly Vehicle[],
  length: number,
): number[] {
  const row = new Array<number>(count).fill(0);
  const leading = 2 * (joint - first);
  const trailing = leading + 2;
  // The line rises with the pivot it is drawn to and falls with the one it is drawn from.
  const p = 0.5 + couplerPivot(vehicles[joint], 'rear').ahead / vehicles[joint].pivotSpacing;
  const q = 0.5 + couplerPivot(vehicles[joint + 1], 'front').ahead / vehicles[joint + 1].pivotSpacing;
  row[leading] += p / length;
  row[leading + 1] += (1 - p) / length;
  row[trailing] -= q / length;
  row[trailing + 1] -= (1 - q) / length;
  // The body's own pitch takes from the tilt.
  const own = 2 * (vehicle - first);
  row[own] -= 1 / vehicles[vehicle].pivotSpacing;
  row[own + 1] += 1 / vehicles[vehicle].pivotSpacing;
  return row;
}
