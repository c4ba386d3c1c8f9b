import { jointLoads } from './moments/jointLoads.ts';
import { newSample, sayNothing } from './moments/sample.ts';
import type { Frame, RiskDefinition, Sample } from './types.ts';
import { newSideForces, type SideForcesOf, sideForces, sideForcesOfPlay } from './wheels/sideForces.ts';
import { halfSpan } from './wheels/wheelPlay.ts';

/**
 * Jack-knifing: pushed, a train folds, and its drawbars press running gear off sideways, in a curve to the outside. The sideways push that comes on
 * a running gear at coupler height, against what stands on it times half the distance of the rails: as a force, N, and the margin as a share of it. The
 * play of the wheels lets vehicles stand askew and folds the drawbars further, the more the shorter they are; its tolerance is the range of the margin. Each running gear
 * tips by itself; a body stiff from end to end would hold more. Pulls are left out: they would take from it.
 */
export const jackKnife: RiskDefinition = {
  id: 'jack-knife',
  subject: 'vehicle',
  unit: 'share',
  valueUnit: 'force',
  plenty: 0.7,
  near: 0.2,
  prepare(context) {
    const { train } = context;
    const { vehicles } = train;
    if (vehicles.length < 2) return null;
    const loads = jointLoads(context);
    const usual = sideForces(context);
    const { snuggest, loosest } = sideForcesOfPlay(context);
    const forces = newSideForces();
    const buff = (frame: number, joint: number): number => loads.peak(frame, joint, false) || 0;
    const pull = (frame: number, joint: number): number => loads.peak(frame, joint, true) || 0;

    const judge = (sides: SideForcesOf, level: boolean, frame: Frame, index: number, out: Sample): void => {
      sayNothing(out);
      const front = buff(frame.index, index - 1);
      const rear = buff(frame.index, index);
      if (front === 0 && rear === 0) return;
      const vehicle = vehicles[index];
      const frontHeight = vehicle.front.coupling.headHeight;
      const rearHeight = vehicle.rear.coupling.headHeight;
      const height = rear === 0 ? frontHeight : front === 0 ? rearHeight : (frontHeight + rearHeight) / 2;
      const lever = vehicle.massHeight / height;
      const arm = halfSpan(vehicle.gauge) / height;
      sides.look(frame, index);
      // What stands on the wheels depends on pulls as well.
      sides.write(index, front || pull(frame.index, index - 1), rear || pull(frame.index, index), 0, forces, level);
      const { frontLoad, rearLoad } = forces;
      for (let skew = -1; skew <= 1; skew += 2) {
        sides.write(index, front, rear, skew as -1 | 1, forces, level);
        for (let end = 0; end < 2; end++) {
          const side = end === 0 ? forces.frontGear : forces.rearGear;
          const mass = end === 0 ? forces.frontMass : forces.rearMass;
          const curvature = end === 0 ? sides.frontCurvature(index) : sides.rearCurvature(index);
          const value = Math.max(0, Math.sign(side) * (side + mass * lever));
          const limit = (end === 0 ? frontLoad : rearLoad) * arm;
          const margin = 1 - value / limit;
          if (margin >= out.margin) continue;
          out.value = value;
          out.limit = limit;
          out.margin = margin;
          out.governing = curvature === 0 ? 'rail' : side * curvature > 0 ? 'inner-rail' : 'outer-rail';
        }
      }
    };
    const inspected = newSample();
    const other = newSample();
    return {
      sample: (frame, index, out) => judge(usual, false, frame, index, out),
      parts: () => [],
      range(frame, index) {
        judge(loosest, false, frame, index, inspected);
        judge(snuggest, false, frame, index, other);
        return Number.isNaN(other.margin) ? null : [inspected.margin, other.margin];
      },
      compare(frame, index) {
        if (context.path.track.cant === null) return [];
        judge(usual, true, frame, index, other);
        const { value, limit, margin } = other;
        return Number.isNaN(margin) ? [] : [{ label: 'without-cant', value, limit, margin }];
      },
    };
  },
};
