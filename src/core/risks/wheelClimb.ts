import { defaultForceModel } from '../dynamics/index.ts';
import type { Vehicle } from '../stock/types.ts';
import { trackPoint } from '../track/index.ts';
import { standardGravity } from '../units/index.ts';
import { jointLoads } from './moments/jointLoads.ts';
import { newSample, sayNothing } from './moments/sample.ts';
import type { Comparison, Frame, Governing, RiskDefinition, Sample } from './types.ts';
import { leansOrCurves } from './wheels/curvatureAt.ts';
import { flangeAngle, nadalQuotient, wheelFriction } from './wheels/nadal.ts';
import { leastLoad, newSideForces, type SideForcesOf, sideForces, sideForcesOfPlay } from './wheels/sideForces.ts';
import { twistUnloading } from './wheels/twistUnloading.ts';

/**
 * Angle between wheel and rail from which wheels slide outright and curving takes its full force, rad; below it in proportion (0.003 to
 * 0.01). Common practice, no source: rolling contact creeps by some thousandths before it slides.
 */
const slidingAngle = 0.005;

/** Less than this share of the limit on straight track is rounding of placements. */
const nothing = 1e-9;

/** Share of full sliding with which a running gear of a wheelbase (m) goes round a curve (1/m). */
const slidingShare = (wheelbase: number, curvature: number): number =>
  Math.min(1, (wheelbase * Math.abs(curvature)) / slidingAngle);

/**
 * Force (N) of the leading flange that turns a running gear along a curve: the couple that curve drag is the work of, load·μ·(0.72·gauge + 0.47·wheelbase),
 * borne over the wheelbase. An upper bound, as the trailing wheels and the friction on the treads bear a part.
 */
function curvingForce({ gauge, rigidWheelbase }: Vehicle, load: number, curvature: number): number {
  const { curveGaugeFactor, curveWheelbaseFactor } = defaultForceModel;
  const couple = load * wheelFriction * (curveGaugeFactor * gauge + curveWheelbaseFactor * rigidWheelbase);
  return (couple / rigidWheelbase) * slidingShare(rigidWheelbase, curvature);
}

/** One moment's worst flange, with what the sum over its axle takes besides. */
interface Worst extends Sample {
  /** How near to sliding the other wheel's tread is. */
  sliding: number;
}

/**
 * Climbing of a flange, as a share of what its wheel stands: sideways force against Nadal's limit times the wheel's load, at the worse axle
 * of either running gear. Sideways: couplings by the real swing of their drawbars, with the play of the wheels in buff; the curve, which
 * presses the leading flange of each wheelbase outward; the speed and the cant. An inward pull first takes from the leading outer flange and
 * presses on the inner one of the trailing axle, which curving leaves alone. Load: what stands on the gear, less what couplings lift, and what a twist of the track
 * takes from one of its wheels.
 */
export const wheelClimb: RiskDefinition = {
  id: 'wheel-climb',
  subject: 'vehicle',
  unit: 'share',
  valueUnit: 'force',
  plenty: 0.7,
  // Friction of 0.3 in place of 0.2 takes 0.18 from the limit: 1.342 for 1.644.
  near: 0.2,
  prepare(context) {
    const { path, run, train } = context;
    const { vehicles } = train;
    if (!leansOrCurves(path.track) && vehicles.length < 2) return null;
    const loads = jointLoads(context);
    const usual = sideForces(context);
    const { snuggest, loosest } = sideForcesOfPlay(context);
    const forces = newSideForces();
    const point = trackPoint(path.track, 0);
    const quotients = Float64Array.from(vehicles, ({ wheels }) =>
      nadalQuotient(wheels?.flangeAngle ?? flangeAngle, wheelFriction),
    );
    /** Nadal's quotient times the share of its load that a wheel of the running gear keeps where the track twists. */
    const stands = new Float64Array(1);

    /** Judges one flange pressed with `side` N under an axle with `load` N, and keeps it if it is the worst so far. */
    const judge = (side: number, load: number, sliding: number, governing: Governing, out: Worst): void => {
      const limit = (stands[0] * load) / 2;
      const margin = 1 - side / limit;
      if (margin >= out.margin) return;
      out.value = side;
      out.limit = limit;
      out.margin = margin;
      out.governing = governing;
      out.sliding = sliding;
    };
    const judgeAxle = (outward: number, load: number, sliding: number, out: Worst): void =>
      judge(Math.abs(outward), load, sliding, outward >= 0 ? 'outer-rail' : 'inner-rail', out);

    /** Both end axles of a bogie, which guide it also where a third one between them bears a share of its load: sideways force to the left and couple on it, its load, the curve there, and the way it goes. */
    const judgeBogie = (
      vehicle: Vehicle,
      side: number,
      couple: number,
      load: number,
      bend: number,
      way: number,
      out: Worst,
    ): void => {
      const outward = bend > 0 ? -1 : 1;
      const turned = (way * couple) / vehicle.rigidWheelbase;
      const sliding = slidingShare(vehicle.rigidWheelbase, bend);
      const axleLoad = load / (vehicle.bogieAxles ?? 2);
      judgeAxle(curvingForce(vehicle, load, bend) + outward * (side / 2 + turned), axleLoad, sliding, out);
      judgeAxle(outward * (side / 2 - turned), axleLoad, sliding, out);
    };

    const judgeVehicle = (sides: SideForcesOf, frame: Frame, index: number, out: Worst): void => {
      const vehicle = vehicles[index];
      const { bogies, mass } = vehicle;
      const placement = frame.placements[index];
      const way = run.speed[frame.index * run.vehicles + index] < 0 ? -1 : 1;
      const frontCurvature = sides.frontCurvature(index);
      const rearCurvature = sides.rearCurvature(index);
      const frontSide = forces.frontGear + forces.frontMass;
      const rearSide = forces.rearGear + forces.rearMass;
      const { frontLoad, rearLoad } = forces;
      stands[0] =
        quotients[index] * Math.max(leastLoad, 1 - twistUnloading(vehicle, placement, path.track, true, point));
      if (bogies) {
        judgeBogie(vehicle, frontSide, forces.frontCouple, frontLoad, frontCurvature, way, out);
        stands[0] =
          quotients[index] * Math.max(leastLoad, 1 - twistUnloading(vehicle, placement, path.track, false, point));
        judgeBogie(vehicle, rearSide, forces.rearCouple, rearLoad, rearCurvature, way, out);
        return;
      }
      const bend = way > 0 ? frontCurvature : rearCurvature;
      const curving = curvingForce(vehicle, mass * standardGravity, bend);
      const sliding = slidingShare(vehicle.rigidWheelbase, bend);
      const outwardFront = frontCurvature > 0 ? -1 : 1;
      const outwardRear = rearCurvature > 0 ? -1 : 1;
      judgeAxle(outwardFront * frontSide + (way > 0 ? curving : 0), frontLoad, sliding, out);
      judgeAxle(outwardRear * rearSide + (way < 0 ? curving : 0), rearLoad, sliding, out);
    };

    const judgeMoment = (sides: SideForcesOf, level: boolean, frame: Frame, index: number, out: Worst): void => {
      out.margin = Number.POSITIVE_INFINITY;
      sides.look(frame, index);
      for (let a = 0; a < 2; a++) {
        const pulled = loads.peak(frame.index, index - 1, a === 0);
        if (Number.isNaN(pulled)) continue;
        for (let b = 0; b < 2; b++) {
          const trailed = loads.peak(frame.index, index, b === 0);
          if (Number.isNaN(trailed)) continue;
          const pushed = pulled < 0 || trailed < 0;
          for (let skew = pushed ? -1 : 0; skew <= (pushed ? 1 : 0); skew += 2) {
            sides.write(index, pulled, trailed, skew as -1 | 0 | 1, forces, level);
            judgeVehicle(sides, frame, index, out);
          }
        }
      }
      if (sides.frontCurvature(index) !== 0 || sides.rearCurvature(index) !== 0) return;
      if (out.value < nothing * out.limit) sayNothing(out);
      else out.governing = 'rail';
    };

    const worst: Worst = { ...newSample(), sliding: 0 };
    const inspected: Worst = { ...newSample(), sliding: 0 };
    const other: Worst = { ...newSample(), sliding: 0 };
    return {
      sample(frame, index, out) {
        judgeMoment(usual, false, frame, index, worst);
        out.value = worst.value;
        out.limit = worst.limit;
        out.margin = worst.margin;
        out.governing = worst.governing;
      },
      parts: () => [],
      range(frame, index) {
        judgeMoment(loosest, false, frame, index, inspected);
        judgeMoment(snuggest, false, frame, index, other);
        // Without a push play makes no difference.
        return Number.isNaN(other.margin) || other.margin <= inspected.margin ? null : [inspected.margin, other.margin];
      },
      compare(frame, index) {
        judgeMoment(usual, false, frame, index, inspected);
        if (Number.isNaN(inspected.margin)) return [];
        const { value, limit, sliding } = inspected;
        const all: Comparison[] = [axleSum(value, limit, quotients[index], sliding)];
        if (path.track.cant !== null) {
          judgeMoment(usual, true, frame, index, other);
          if (!Number.isNaN(other.margin))
            all.push({ label: 'without-cant', value: other.value, limit: other.limit, margin: other.margin });
        }
        return all;
      },
    };
  },
};

/**
 * The same flange by the sum over its axle: both wheels' sideways over vertical force, the other one's only its tread's friction, against Nadal's limit
 * and the whole friction. It takes the tread's share of sliding, so that it agrees with Nadal where wheels slide and allows more at a small angle of attack, where
 * Nadal is conservative. As forces of the flange, N. Source: the axle-sum criterion of full-size practice (Weinstock), from memory.
 */
function axleSum(side: number, limit: number, quotient: number, sliding: number): Comparison {
  const wheel = limit / quotient;
  const most = (quotient + wheelFriction * (1 - sliding)) * wheel;
  return { label: 'axle-sum', value: side, limit: most, margin: 1 - side / most };
}
