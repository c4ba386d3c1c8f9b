import { GAUGE_FACTOR, WHEELBASE_FACTOR } from '../dynamics/routeTables.ts';
import type { Vehicle } from '../stock/types.ts';
import { trackPoint } from '../track/index.ts';
import { standardGravity } from '../units/index.ts';
import { jointLoads } from './jointLoads.ts';
import { flangeAngle, nadalQuotient, wheelFriction } from './nadal.ts';
import { sayNothing } from './sample.ts';
import { newSideForces, type SideForces, sideForces } from './sideForces.ts';
import type { Governing, RiskDefinition, Sample } from './types.ts';

/**
 * Angle between wheel and rail from which wheels slide outright and curving takes its full force, rad; below it in proportion (0.003 to
 * 0.01). Common practice, no source: rolling contact creeps by some thousandths before it slides.
 */
const slidingAngle = 0.005;

/** Less than this share of the limit on straight track is rounding of placements. */
const nothing = 1e-9;

/**
 * Force (N) of the leading flange that turns a running gear along a curve: the couple that curve drag is the work of, load·μ·(0.72·gauge + 0.47·wheelbase),
 * borne over the wheelbase. An upper bound, as the trailing wheels and the friction on the treads bear a part.
 */
function curvingForce({ gauge, rigidWheelbase }: Vehicle, load: number, curvature: number): number {
  const couple = load * wheelFriction * (GAUGE_FACTOR * gauge + WHEELBASE_FACTOR * rigidWheelbase);
  return (couple / rigidWheelbase) * Math.min(1, (rigidWheelbase * Math.abs(curvature)) / slidingAngle);
}

/**
 * Climbing of a flange, as a share of what its wheel stands: sideways force against Nadal's limit times the wheel's load, at the worse axle
 * of either running gear. Sideways: couplings by the real swing of their drawbars, with the play of the wheels in buff; the curve, which
 * presses the leading flange of each wheelbase outward; the speed. An inward pull first takes from the leading outer flange and
 * presses on the inner one of the trailing axle, which curving leaves alone.
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
    const curved = path.track.plan.elements.some((one) => one.startCurvature !== 0 || one.endCurvature !== 0);
    if (!curved && vehicles.length < 2) return null;
    const loads = jointLoads(context);
    const sides = sideForces(context);
    const forces = newSideForces();
    const point = trackPoint(path.track, 0);
    const quotient = nadalQuotient(flangeAngle, wheelFriction);

    /** Judges one flange pressed with `side` N under an axle with `load` N, and keeps it if it is the worst so far. */
    const judge = (side: number, load: number, governing: Governing, out: Sample): void => {
      const limit = (quotient * load) / 2;
      const margin = 1 - side / limit;
      if (margin >= out.margin) return;
      out.value = side;
      out.limit = limit;
      out.margin = margin;
      out.governing = governing;
    };

    /** Both axles of a bogie; `outward` turns left into outward, `way` is where it is going. */
    const judgeBogie = (side: number, couple: number, curving: number, load: number, turn: Turn, out: Sample): void => {
      const { wheelbase, outward, way } = turn;
      const leading = curving + outward * (side / 2 + (way * couple) / wheelbase);
      const trailing = outward * (side / 2 - (way * couple) / wheelbase);
      judgeAxle(leading, load / 2, out);
      judgeAxle(trailing, load / 2, out);
    };
    const judgeAxle = (side: number, load: number, out: Sample): void =>
      judge(Math.abs(side), load, side >= 0 ? 'outer-rail' : 'inner-rail', out);

    const judgeVehicle = (vehicle: Vehicle, speed: number, front: number, rear: number, out: Sample): void => {
      const { bogies, rigidWheelbase, mass } = vehicle;
      const way = speed < 0 ? -1 : 1;
      const outwardFront = front > 0 ? -1 : 1;
      const outwardRear = rear > 0 ? -1 : 1;
      const whirl = (speed * speed) / standardGravity;
      // The push of the speed, as a force to the left.
      const { frontLoad, rearLoad } = forces;
      const frontSide = forces.frontGear - frontLoad * whirl * front;
      const rearSide = forces.rearGear - rearLoad * whirl * rear;
      if (bogies) {
        const curvingFront = curvingForce(vehicle, frontLoad, front);
        const curvingRear = curvingForce(vehicle, rearLoad, rear);
        turn.wheelbase = rigidWheelbase;
        turn.way = way;
        turn.outward = outwardFront;
        judgeBogie(frontSide, forces.frontCouple, curvingFront, frontLoad, turn, out);
        turn.outward = outwardRear;
        judgeBogie(rearSide, forces.rearCouple, curvingRear, rearLoad, turn, out);
        return;
      }
      const curving = curvingForce(vehicle, mass * standardGravity, way > 0 ? front : rear);
      judgeAxle(outwardFront * frontSide + (way > 0 ? curving : 0), frontLoad, out);
      judgeAxle(outwardRear * rearSide + (way < 0 ? curving : 0), rearLoad, out);
    };
    const turn: Turn = { wheelbase: 1, outward: 1, way: 1 };

    return {
      sample(frame, index, out) {
        const vehicle = vehicles[index];
        const placement = frame.placements[index];
        const front = trackPoint(path.track, placement.frontChainage, point).curvature;
        const rear = trackPoint(path.track, placement.rearChainage, point).curvature;
        const speed = run.speed[frame.index * run.vehicles + index];
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
              sides.write(pulled, trailed, skew as -1 | 0 | 1, forces as SideForces);
              judgeVehicle(vehicle, speed, front, rear, out);
            }
          }
        }
        if (front !== 0 || rear !== 0) return;
        if (out.value < nothing * out.limit) sayNothing(out);
        else out.governing = 'rail';
      },
      parts: () => [],
    };
  },
};

/** How a bogie runs: wheelbase m, side that is outward (1: left) and way it goes (1: front first). */
interface Turn {
  wheelbase: number;
  outward: number;
  way: number;
}
