import { jointLoads } from './moments/jointLoads.ts';
import { newSample, sayNothing } from './moments/sample.ts';
import type { Frame, RiskDefinition, Sample } from './types.ts';
import { leansOrCurves } from './wheels/curvatureAt.ts';
import { newSideForces, sideForces } from './wheels/sideForces.ts';
import { halfSpan } from './wheels/wheelPlay.ts';

/**
 * String-lining: pulled, a train straightens like a string and a light vehicle in it tips over the inner rail. The sideways pull of both couplings by the real swing of
 * their drawbars, at the height of their heads, against what stands on the rails times half their distance: as a force at coupler height, N, and the
 * margin as a share of it. The speed takes from it, cant that leans inwards adds to it. The vehicle tips as a whole, stiff from end to end. Pushes are
 * left out: they would take from it too.
 */
export const stringLining: RiskDefinition = {
  id: 'string-lining',
  subject: 'vehicle',
  unit: 'share',
  valueUnit: 'force',
  plenty: 0.7,
  near: 0.2,
  prepare(context) {
    const { path, train } = context;
    const { vehicles } = train;
    if (!leansOrCurves(path.track) || vehicles.length < 2) return null;
    const loads = jointLoads(context);
    const sides = sideForces(context);
    const forces = newSideForces();
    const draft = (frame: number, joint: number): number => Math.max(0, loads.peak(frame, joint, true) || 0);

    const judge = (frame: Frame, index: number, level: boolean, out: Sample): void => {
      const front = draft(frame.index, index - 1);
      const rear = draft(frame.index, index);
      sayNothing(out);
      if (front === 0 && rear === 0) return;
      const vehicle = vehicles[index];
      sides.look(frame, index);
      sides.write(index, front, rear, 0, forces, level);
      const frontHeight = vehicle.front.coupling.headHeight;
      const rearHeight = vehicle.rear.coupling.headHeight;
      const height = rear === 0 ? frontHeight : front === 0 ? rearHeight : (frontHeight + rearHeight) / 2;
      const pull = forces.frontEnd * frontHeight + forces.rearEnd * rearHeight;
      const mass = (forces.frontMass + forces.rearMass) * vehicle.massHeight;
      const bend = sides.frontCurvature(index) + sides.rearCurvature(index);
      out.value = Math.max(0, Math.sign(pull) * (pull + mass)) / height;
      out.limit = ((forces.frontLoad + forces.rearLoad) * halfSpan(vehicle.gauge)) / height;
      out.margin = 1 - out.value / out.limit;
      out.governing = bend === 0 ? 'rail' : pull * bend < 0 ? 'outer-rail' : 'inner-rail';
    };
    const inspected = newSample();
    return {
      sample: (frame, index, out) => judge(frame, index, false, out),
      parts: () => [],
      compare(frame, index) {
        if (path.track.cant === null) return [];
        judge(frame, index, true, inspected);
        const { value, limit, margin } = inspected;
        return Number.isNaN(margin) ? [] : [{ label: 'without-cant', value, limit, margin }];
      },
    };
  },
};
