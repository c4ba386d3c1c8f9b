import { trackPoint } from '../track/index.ts';
import { standardGravity } from '../units/index.ts';
import { jointLoads } from './jointLoads.ts';
import { sayNothing } from './sample.ts';
import { newSideForces, sideForces } from './sideForces.ts';
import type { RiskDefinition } from './types.ts';
import { halfSpan } from './wheelPlay.ts';

/**
 * Jack-knifing: pushed, a train folds, and its drawbars press running gear off sideways, in a curve to the outside. The sideways push that comes on
 * a running gear at coupler height, against what stands on it times half the distance of the rails: as a force, N, and the margin as a share of it. The
 * play of the wheels lets vehicles stand askew and folds the drawbars further, the more the shorter they are. Each running gear tips by itself; a body stiff
 * from end to end would hold more. Pulls are left out: they would take from it.
 */
export const jackKnife: RiskDefinition = {
  id: 'jack-knife',
  subject: 'vehicle',
  unit: 'share',
  valueUnit: 'force',
  plenty: 0.7,
  near: 0.2,
  prepare(context) {
    const { path, run, train } = context;
    const { vehicles } = train;
    if (vehicles.length < 2) return null;
    const loads = jointLoads(context);
    const sides = sideForces(context);
    const forces = newSideForces();
    const point = trackPoint(path.track, 0);
    const buff = (frame: number, joint: number): number => loads.peak(frame, joint, false) || 0;
    const pull = (frame: number, joint: number): number => loads.peak(frame, joint, true) || 0;
    return {
      sample(frame, index, out) {
        sayNothing(out);
        const front = buff(frame.index, index - 1);
        const rear = buff(frame.index, index);
        if (front === 0 && rear === 0) return;
        const vehicle = vehicles[index];
        const placement = frame.placements[index];
        const frontHeight = vehicle.front.coupling.headHeight;
        const rearHeight = vehicle.rear.coupling.headHeight;
        const height = rear === 0 ? frontHeight : front === 0 ? rearHeight : (frontHeight + rearHeight) / 2;
        const speed = run.speed[frame.index * run.vehicles + index];
        const whirl = ((speed * speed) / standardGravity) * (vehicle.massHeight / height);
        const arm = halfSpan(vehicle.gauge) / height;
        sides.look(frame, index);
        // What stands on the wheels depends on pulls as well.
        sides.write(front || pull(frame.index, index - 1), rear || pull(frame.index, index), 0, forces);
        const { frontLoad, rearLoad } = forces;
        for (let skew = -1; skew <= 1; skew += 2) {
          sides.write(front, rear, skew as -1 | 1, forces);
          for (let end = 0; end < 2; end++) {
            const side = end === 0 ? forces.frontGear : forces.rearGear;
            const load = end === 0 ? frontLoad : rearLoad;
            const chainage = end === 0 ? placement.frontChainage : placement.rearChainage;
            const { curvature } = trackPoint(path.track, chainage, point);
            const value = Math.max(0, Math.sign(side) * (side - load * whirl * curvature));
            const limit = load * arm;
            const margin = 1 - value / limit;
            if (margin >= out.margin) continue;
            out.value = value;
            out.limit = limit;
            out.margin = margin;
            out.governing = curvature === 0 ? 'rail' : side * curvature > 0 ? 'inner-rail' : 'outer-rail';
          }
        }
      },
      parts: () => [],
    };
  },
};
