import { trackPoint } from '../track/index.ts';
import { standardGravity } from '../units/index.ts';
import { jointLoads } from './jointLoads.ts';
import { sayNothing } from './sample.ts';
import { newSideForces, sideForces } from './sideForces.ts';
import type { RiskDefinition } from './types.ts';
import { halfSpan } from './wheelPlay.ts';

/**
 * String-lining: pulled, a train straightens like a string and a light vehicle in it tips over the inner rail. The sideways pull of both couplings by the real swing of
 * their drawbars, at the height of their heads, against weight on half the distance of the rails: as a force at coupler height, N, and the
 * margin as a share of it. The speed takes from it. The vehicle tips as a whole, stiff from end to end. Pushes are left out: they
 * would take from it too.
 */
export const stringLining: RiskDefinition = {
  id: 'string-lining',
  subject: 'vehicle',
  unit: 'share',
  valueUnit: 'force',
  plenty: 0.7,
  near: 0.2,
  prepare(context) {
    const { path, run, train } = context;
    const { vehicles } = train;
    const curved = path.track.plan.elements.some((one) => one.startCurvature !== 0 || one.endCurvature !== 0);
    if (!curved || vehicles.length < 2) return null;
    const loads = jointLoads(context);
    const sides = sideForces(context);
    const forces = newSideForces();
    const point = trackPoint(path.track, 0);
    const draft = (frame: number, joint: number): number => Math.max(0, loads.peak(frame, joint, true) || 0);
    return {
      sample(frame, index, out) {
        const front = draft(frame.index, index - 1);
        const rear = draft(frame.index, index);
        if (front === 0 && rear === 0) return sayNothing(out);
        const vehicle = vehicles[index];
        const placement = frame.placements[index];
        sides.look(frame, index);
        sides.write(front, rear, 0, forces);
        const { mass, massHeight } = vehicle;
        const frontHeight = vehicle.front.coupling.headHeight;
        const rearHeight = vehicle.rear.coupling.headHeight;
        const height = rear === 0 ? frontHeight : front === 0 ? rearHeight : (frontHeight + rearHeight) / 2;
        const pull = forces.frontEnd * frontHeight + forces.rearEnd * rearHeight;
        const bend =
          (trackPoint(path.track, placement.frontChainage, point).curvature +
            trackPoint(path.track, placement.rearChainage, point).curvature) /
          2;
        const speed = run.speed[frame.index * run.vehicles + index];
        const whirl = -mass * speed * speed * bend * massHeight;
        out.value = Math.max(0, Math.sign(pull) * (pull + whirl)) / height;
        out.limit = (mass * standardGravity * placement.up[2] * halfSpan(vehicle.gauge)) / height;
        out.margin = 1 - out.value / out.limit;
        out.governing = pull * bend < 0 ? 'outer-rail' : 'inner-rail';
      },
      parts: () => [],
    };
  },
};
